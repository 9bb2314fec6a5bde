import { readDecimal, readFraction, tidy } from './number.ts'
import { readTorque } from './quantity.ts'
import { notUnderstood, type Reading, understood } from './reading.ts'

/** One pass over all fasteners of a pattern, as the machine's manual gives it. */
export type TighteningPass = PassKind & {
  typed: string
  /** Round and round clockwise instead of in the order of the pattern, as the last pass of a flange. */
  round?: true | undefined
}

type PassKind =
  | { kind: 'snug' }
  | { kind: 'torque'; newtonMetres: number }
  /** Turned on from where the pass before left it. */
  | { kind: 'angle'; degrees: number }
  /** The wrench must click without the fastener turning. */
  | { kind: 'check'; newtonMetres: number }
  /** Turned back by so much, or fully where no angle is given. */
  | { kind: 'back-off'; degrees?: number | undefined }
  /** A paint mark from the fastener to the part, drawn when everything is turned. */
  | { kind: 'witness' }

/** Why a pass was not understood: nothing there, no form of a pass, no possible torque or angle, or more than 12. */
export type PassFault = 'empty' | 'form' | 'torque' | 'angle' | 'too-many'

const mostPasses = 12
// Torque-to-yield stages add up to less than a turn; two turns leave room for studs run down by angle.
const mostDegrees = 720

const turnWords = new Map(
  Object.entries({ quarter: 1 / 4, half: 1 / 2, third: 1 / 3, full: 1, one: 1, a: 1 }),
)

/** Reads a tightening pass: `20 Nm`, `90 deg`, `+90°`, `1/4 turn`, `2 flats`, `snug`, `check 22 Nm`. */
export function readPass(text: string): Reading<TighteningPass, PassFault> {
  const typed = text.trim()
  const form = tidy(text).toLowerCase()
  if (form === '') return notUnderstood('empty', '', '20 Nm')
  if (/^(?:snug|snug tight|hand tight|finger tight)$/.test(form)) return understood({ kind: 'snug', typed })
  const turn = readTurn(form)
  if (turn !== undefined) {
    if (turn <= 0 || turn > mostDegrees) return notUnderstood('angle', typed, '90 deg')
    return understood({ kind: 'angle', degrees: turn, typed })
  }
  const isCheck = /^check\b/.test(form)
  const torqueText = typed.replace(/^check(?:\s+at|:)?\s?|^torque\s?|^\+\s?/i, '')
  const torque = readTorque(torqueText)
  if (torque.understood) {
    return understood({ kind: isCheck ? 'check' : 'torque', newtonMetres: torque.value.newtonMetres, typed })
  }
  const nearest = isCheck ? `check ${torque.nearest}` : torque.nearest
  const isTorque =
    torque.code === 'not-positive' || torque.code === 'too-large' || torque.code === 'thousands'
  return notUnderstood(isTorque ? 'torque' : 'form', typed, nearest)
}

/** Reads the passes of a tightening in their order: `20 Nm, 40 Nm, 90 deg`, `40 Nm + 90° + 90°`. */
export function readPasses(text: string): Reading<TighteningPass[], PassFault> {
  // A comma between two digits is a decimal comma.
  const parts = text
    .split(/;|,(?!\d)|(?<!\d),|\+|\bthen\b/iu)
    .map((part) => part.trim())
    .filter((part) => part !== '')
  if (parts.length === 0) return notUnderstood('empty', '', '20 Nm, 40 Nm, 90 deg')
  if (parts.length > mostPasses)
    return notUnderstood('too-many', text.trim(), parts.slice(0, mostPasses).join(', '))
  const passes: TighteningPass[] = []
  for (const part of parts) {
    const pass = readPass(part)
    if (!pass.understood) return pass
    passes.push(pass.value)
  }
  return understood(passes)
}

/** Degrees of a turn; undefined where the text speaks of none. */
function readTurn(form: string): number | undefined {
  const match = /^\+? ?(-?[\d.,/ -]{1,12}|[a-z]+) ?(°|deg|degs|degree|degrees|turn|turns|flat|flats)$/.exec(
    form,
  )
  if (!match) return undefined
  const [, numberText = '', unit = ''] = match
  const number =
    turnWords.get(numberText) ?? readDecimal(numberText.trim()) ?? readFraction(numberText.trim())
  if (number === undefined) return undefined
  // One flat of a hexagon is a sixth of a turn.
  const degrees = unit.startsWith('turn') ? 360 : unit.startsWith('flat') ? 60 : 1
  return Math.round(number * degrees * 1e6) / 1e6
}
