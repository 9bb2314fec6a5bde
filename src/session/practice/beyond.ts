import { leftovers } from '../../plan/leftovers.ts'
import { entriesInForce } from '../in-force.ts'
import type { Session } from '../session.ts'
import type { Entry } from '../stored-entry.ts'

/**
 * Whether something holds up the job that no lesson leads through: a verdict, an order, a piece that is out. It is
 * asked before anything else is taught, so that what is taken back never has to be done twice.
 */
export function isBeyond(session: Session): boolean {
  const { state } = session
  if (state.inForce.length < 2) return false
  if (comesOffAgain(session)) return true
  // Work of the way back alone asks for a result. A second look holds up only what is done already: seen too late, the
  // step would be done and taken back for ever.
  if ([...state.steps.values()].some(({ way, critical }) => way !== 'both' || critical)) return true
  const gates = session.gates()
  const reasons = [...state.steps.values()].flatMap(({ no, built }) =>
    built === 'done' ? [] : [...gates.start(no), ...gates.finish(no)],
  )
  return (
    reasons.some(({ code }) => !TAUGHT_REASONS.has(code)) ||
    leftovers(gates).some(
      (left) => !TAUGHT_LEFTOVERS.has(left.code) || ('place' in left && !isAtHand(left.place)),
    )
  )
}

/** What comes off while something goes back on lies beneath it: that asks for reopening, and is no first lesson. */
function comesOffAgain(session: Session): boolean {
  const told = entriesInForce(session)
  const began = told.findIndex(
    (entry) => entry.type === 'build-began' || ('began' in entry && entry.began === true),
  )
  return began >= 0 && told.slice(began).some((entry) => entry.type === 'came-off' || opensStep(entry))
}

/** Whether a step began to come off with it, by itself or by the way. */
function opensStep(entry: Entry): boolean {
  return entry.type === 'strip-began' || ('began' in entry && typeof entry.began === 'object')
}

const TAUGHT_REASONS: ReadonlySet<string> = new Set([
  'still-stripping',
  'step-before',
  'not-cleared',
  'not-home',
  'aid-in',
  'look-due',
  'mark-open',
  'tighten-open',
  'fluid-open',
  'turns-open',
])

const TAUGHT_LEFTOVERS: ReadonlySet<string> = new Set([
  'piece-off',
  'aid-in',
  'tool-out',
  'fluid-open',
  'mark-open',
  'tighten-open',
  'step-open',
])

/** In a container, on the machine or on the bench. */
function isAtHand(place: string): boolean {
  return place === 'machine' || place === 'bench' || /^[cp]\d/.test(place)
}
