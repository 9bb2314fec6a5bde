import { readDecimal, tidy, withoutNoise } from '../number.ts'
import { type QuantityFault, readTorque } from '../quantity.ts'
import { type NotUnderstood, notUnderstood, type Reading, understood } from '../reading.ts'
import { areTheSame, printedPair } from './printed-pair.ts'
import { middleOf } from './tolerance.ts'
import { readTurn } from './turn.ts'

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

/**
 * Why a pass was not understood: nothing there, no form of a pass, no possible torque or angle, a tolerance or range
 * that is none, two units that do not say the same, a percentage that is none or not of a torque.
 */
export type PassFault =
  | 'empty'
  | 'form'
  | 'torque'
  | 'angle'
  | 'range'
  | 'pair'
  | 'percent'
  | 'percent-torque'

// Torque-to-yield stages add up to less than a turn; two turns leave room for studs run down by angle.
const mostDegrees = 720

/**
 * Reads a tightening pass: `20 Nm`, `40 Nm (30 lbf·ft)`, `40 ± 4 Nm`, `37..43 Nm`, `30 % of 60 Nm`, `90 deg`, `1/4 turn`, `2 flats`, `snug`,
 * `check 22 Nm`, `back off`, `back off 180 deg`, `mark`; with `clockwise` behind it for a pass round and round. Of a
 * tolerance or a range the middle counts.
 */
export function readPass(text: string): Reading<TighteningPass, PassFault> {
  const typed = text.trim()
  const form = tidy(text)
  if (form === '') return notUnderstood('empty', '', '20 Nm')
  const [, bare, way] = /^(.+?),? ?\b(clockwise|all round|round and round|round)$/i.exec(form) ?? []
  const pass = readKind(bare ?? form, typed)
  if (!pass.understood) return pass
  const { kind } = pass.value
  if (way === undefined) return understood({ ...pass.value, typed })
  // A fastener turned clockwise is not yet one after the other clockwise.
  if (/^clockwise$/i.test(way) && (kind === 'angle' || kind === 'back-off'))
    return notUnderstood('form', typed, `${typed.slice(0, -way.length).trim()} all round`)
  return understood({ ...pass.value, typed, round: true })
}

function readKind(form: string, typed: string): Reading<PassKind, PassFault> {
  if (/^(?:run (?:in|down) )?(?:snug(?:[ -]tight)?|(?:hand|finger)[ -]tight|by hand)$/i.test(form))
    return understood({ kind: 'snug' })
  if (
    /^(?:draw |make )?(?:an? |the |all )?(?:(?:witness|paint|torque) )?(?:marks?|stripes?|witness)(?: all)?$/i.test(
      form,
    )
  )
    return understood({ kind: 'witness' })
  const back =
    /^(?:back(?:ed)?[ -]?off|loosen|slacken)(?: off)?(?: all)?(?: (fully|completely))?(?: by)?(?: (.+))?$/i.exec(
      form,
    )
  if (back) return readBackOff(back[1], back[2], typed)
  const isCheck = /^(?:final )?(?:re)?check\b/i.test(form)
  const whole = form.replace(
    /^(?:final )?(?:re)?check\b(?: at|:)? ?|^(?:torque|snug|tighten)\b(?: to)? ?|^to /i,
    '',
  )
  const { amount, beside } = printedPair(whole)
  if (beside !== undefined && !areTheSame(amount, beside))
    return notUnderstood('pair', typed, typed.replace(/ ?\([^()]*\)/, ''))
  const level = middleOf(amount)
  if (level === 'wrong') return notUnderstood('range', typed, '36..44 Nm')
  if (!isCheck) {
    const turn = readTurn(level ?? amount)
    if (turn !== undefined) return angleOf(turn, typed)
  }
  const torque = readShare(level ?? amount)
  if (torque.understood) return understood({ kind: isCheck ? 'check' : 'torque', newtonMetres: torque.value })
  return notUnderstood(torque.code, typed, isCheck ? `check ${torque.nearest}` : torque.nearest)
}

function readBackOff(
  isFull: string | undefined,
  by: string | undefined,
  typed: string,
): Reading<PassKind, PassFault> {
  if (by === undefined) return understood({ kind: 'back-off' })
  const degrees = isFull === undefined ? readTurn(by) : undefined
  if (degrees === undefined) return notUnderstood('form', typed, 'back off 180 deg')
  const angle = angleOf(degrees, typed)
  return angle.understood
    ? understood({ kind: 'back-off', degrees })
    : notUnderstood('angle', typed, 'back off 180 deg')
}

function angleOf(degrees: number, typed: string): Reading<{ kind: 'angle'; degrees: number }, PassFault> {
  if (degrees <= 0 || degrees > mostDegrees) return notUnderstood('angle', typed, '90 deg')
  return understood({ kind: 'angle', degrees })
}

/** Newton metres of a torque, or of a percentage of one. */
function readShare(amount: string): Reading<number, PassFault> {
  const [, percentText, of = ''] = /^([\d.,]+) ?(?:%|percent)(?: of (.+))?$/i.exec(amount) ?? []
  const torque = readTorque(percentText === undefined ? amount : of)
  if (percentText === undefined)
    return torque.understood ? understood(torque.value.newtonMetres) : torqueFault(torque)
  const percent = readDecimal(percentText)
  const torqueText = torque.understood ? of : '60 Nm'
  if (percent === undefined || percent <= 0 || percent > 100)
    return notUnderstood('percent', amount, `100 % of ${torqueText}`)
  if (!torque.understood) return notUnderstood('percent-torque', amount, `${percentText} % of ${torqueText}`)
  return understood(withoutNoise((torque.value.newtonMetres * percent) / 100))
}

function torqueFault({ code, part, nearest }: NotUnderstood<QuantityFault>): NotUnderstood<PassFault> {
  const isTorque = code === 'not-positive' || code === 'too-large' || code === 'thousands'
  return notUnderstood(isTorque ? 'torque' : 'form', part, nearest)
}
