import type { TighteningId } from '../../plan/facts.ts'
import { interrupt } from '../../plan/tightening.ts'
import type { State } from '../state.ts'

/** What it does that work stops. */
export interface Interruption {
  /** Tightenings of which a fastener comes into doubt. */
  doubted: TighteningId[]
  /** Tightenings whose pass begins again. */
  begunAgain: TighteningId[]
  /** Steps whose count of turns begins again. */
  uncounted: number[]
}

/** What it would do to a job if work stopped now; `abrupt`: nobody can say how far it was. */
export function interruption(state: State, abrupt: boolean): Interruption {
  const found: Interruption = { doubted: [], begunAgain: [], uncounted: [] }
  for (const step of state.steps.values())
    if (step.built === 'underway' && step.turned > 0) found.uncounted.push(step.no)
  for (const { id, step, passes, order, done, suspect } of state.tightenings.values()) {
    if (state.steps.get(step)?.built !== 'underway') continue
    const trial = { passes, order, suspect, done: done.map((through) => new Set(through)) }
    interrupt(trial, abrupt)
    if (trial.suspect !== suspect) found.doubted.push(id)
    else if (trial.done.some((through, pass) => through.size !== done[pass]?.size)) found.begunAgain.push(id)
  }
  return found
}

/** Whether a stop would do nothing to the job. */
export function isHarmless({ doubted, begunAgain, uncounted }: Interruption): boolean {
  return doubted.length + begunAgain.length + uncounted.length === 0
}
