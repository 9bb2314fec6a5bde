import type { Entry } from '../entry.ts'
import type { State } from '../state.ts'

/** Notes who worked in a step on the way back, and when: a second look is not the doer's, or comes later. */
export function noteWork(state: State, entry: Entry): void {
  const step = stepWorkedIn(state, entry)
  const facts = step === null ? undefined : state.steps.get(step)
  if (!facts) return
  const by = entry.by ?? ''
  const before = facts.work ?? { by: [], at: entry.at, fittedAt: null }
  facts.work = {
    by: before.by.includes(by) ? before.by : [...before.by, by],
    at: later(entry.at, before.at),
    fittedAt: entry.type === 'fitted' ? later(entry.at, before.fittedAt) : before.fittedAt,
  }
}

/** What was taken over from a copy may have been done before what was written here: who waits, waits from the later. */
function later(one: string, other: string | null): string {
  return other !== null && Date.parse(other) > Date.parse(one) ? other : one
}

function stepWorkedIn(state: State, entry: Entry): number | null {
  switch (entry.type) {
    case 'build-began':
    case 'fitted':
    case 'build-done':
    case 'turned-over':
      return entry.step
    case 'confirmed':
      return state.marks.get(entry.mark)?.step ?? null
    case 'tightened':
    case 'angle-settled':
      return state.tightenings.get(entry.tightening)?.step ?? null
    case 'applied':
      return state.consumables.get(entry.consumable)?.step ?? null
    case 'filled':
      return state.fluids.get(entry.fluid)?.step ?? null
    default:
      return null
  }
}
