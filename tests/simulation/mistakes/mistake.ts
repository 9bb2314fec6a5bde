import type { Act } from '../job/act.ts'
import type { Known } from '../job/known.ts'

/**
 * What a mistake is, seen by the hands: not done and not said to be done; said to be done, but not done; done wrongly; done, but
 * never told to the record; or made by who takes up work that was broken off.
 */
export type Going = 'left out' | 'ticked' | 'wrong' | 'never written' | 'broken off'

/** A mistake that was made and is still there. */
export interface Defect {
  mistake: string
  going: Going
  /** When it was made: of how many acts done before. */
  at: number
  /** The ids under which the record knows what it is about: `p3`, `t1`, `m2`, `f1`, `s1`, `k4`, `step 7`. */
  subjects(known: Known): string[]
  /** What puts it right, in the order of the hands. */
  cure: readonly Act[]
}

/** Where a mistake was stopped. */
export type Where =
  | 'at once'
  | 'step closed'
  | 'next step'
  | 'last look'
  | 'second look'
  | 'last round'
  | 'last gate'

/** What became of one mistake. `asked`: named in a question that holds up nothing. `unseen`: the first start was cleared over it. */
export type Fate =
  | { mistake: string; going: Going; came: 'stopped'; where: Where; refusal: string }
  | { mistake: string; going: Going; came: 'asked' | 'unseen' }
