import type { TighteningPass } from './tightening-pass.ts'

/** What is worth asking about the passes of a tightening. Never refused: the machine's manual decides. `pass` is counted from 0. */
export type PassQuestion =
  /** Less torque than the pass `before`, and nothing backed off in between. */
  | ({ code: 'torque-falls' } & Lower)
  /** The wrench clicks before the torque of the pass `before` is reached: it shows nothing. */
  | ({ code: 'check-below' } & Lower)
  /** An angle counts from where a torque or snug left the fastener. */
  | { code: 'angle-from-loose'; pass: number; typed: string }
  /** All angles since the last loosening, more than a turn. */
  | { code: 'angle-over-a-turn'; pass: number; degrees: number }
  /** Nothing is tightened after the last backing off. */
  | { code: 'ends-backed-off'; pass: number; typed: string }

interface Lower {
  pass: number
  typed: string
  newtonMetres: number
  before: { pass: number; typed: string; newtonMetres: number }
}

const fullTurn = 360

/** What is worth asking about passes, in their order; what was backed off counts no more. */
export function questionPasses(passes: readonly TighteningPass[]): PassQuestion[] {
  const questions: PassQuestion[] = []
  let since = nothingTurned()
  for (const [index, pass] of passes.entries()) {
    if (pass.kind === 'back-off') since = nothingTurned()
    const question = questionPass(pass, index, since)
    if (question) questions.push(question)
    since = afterPass(since, pass, index)
  }
  const last = passes.findLastIndex(({ kind }) => kind !== 'witness')
  const end = passes[last]
  if (end?.kind === 'back-off') questions.push({ code: 'ends-backed-off', pass: last, typed: end.typed })
  return questions
}

/** What was turned since the beginning or the last backing off. */
interface Turned {
  torque: Lower['before'] | null
  isSeated: boolean
  degrees: number
}

function nothingTurned(): Turned {
  return { torque: null, isSeated: false, degrees: 0 }
}

function questionPass(pass: TighteningPass, index: number, since: Turned): PassQuestion | null {
  const { torque, isSeated, degrees } = since
  switch (pass.kind) {
    case 'torque':
    case 'check': {
      if (!torque || pass.newtonMetres >= torque.newtonMetres) return null
      return {
        code: pass.kind === 'check' ? 'check-below' : 'torque-falls',
        pass: index,
        typed: pass.typed,
        newtonMetres: pass.newtonMetres,
        before: torque,
      }
    }
    case 'angle': {
      if (!isSeated) return { code: 'angle-from-loose', pass: index, typed: pass.typed }
      const total = degrees + pass.degrees
      // Once, where the turn is passed.
      if (degrees > fullTurn || total <= fullTurn) return null
      return { code: 'angle-over-a-turn', pass: index, degrees: total }
    }
    case 'snug':
    case 'back-off':
    case 'witness':
      return null
    default:
      return pass satisfies never
  }
}

function afterPass(since: Turned, pass: TighteningPass, index: number): Turned {
  switch (pass.kind) {
    case 'torque': {
      const { typed, newtonMetres } = pass
      return { ...since, isSeated: true, torque: { pass: index, typed, newtonMetres } }
    }
    case 'snug':
      return { ...since, isSeated: true }
    case 'angle':
      return { ...since, isSeated: true, degrees: since.degrees + pass.degrees }
    default:
      return since
  }
}
