import type { Heed } from '../../../src/session/heeds.ts'
import type { Act } from '../job/act.ts'
import type { Known } from '../job/known.ts'
import type { Thing } from '../machines/machine.ts'

/**
 * What a mistake is, seen by the hands: not done and not said to be done; said to be done, but not done; done wrongly; done, but
 * never told to the record; or made by who takes up work that was broken off.
 */
export type Going = 'left out' | 'ticked' | 'wrong' | 'never written' | 'broken off'

/** A mistake that was made and is still there. */
export interface Defect {
  mistake: string
  going: Going
  /** The step in which it was made. */
  step: number
  /** The ids under which the record knows what it is about: `p3`, `t1`, `m2`, `f1`, `s1`, `k4`, `step 7`. */
  subjects(known: Known): string[]
  /** What puts it right, in the order of the hands. */
  cure: readonly Act[]
  about?: Thing | undefined
  /** Whether an act that is refused for it needs no line of its own, once it is found. */
  settles?: ((act: Act) => boolean) | undefined
  /** Whether what puts it right is void once its step comes apart, so that it is said again. */
  isVoided?: boolean
  /** What still lies about that is said to be on the machine. */
  lies?: Lies | undefined
  /** Questions that hold up nothing and are about just this. */
  askedBy?: readonly Heed['heed'][] | undefined
  /** Whether it kept a thing out of the record. */
  keepsOut?: ((thing: Thing) => boolean) | undefined
  /** Whether it is before one's eyes when this is done. */
  shows?: ((act: Act) => boolean) | undefined
}

/** One piece that is not where the record has it, but in the bag or slot that it came off into, or on the bench; or not in the toolbox. */
export interface Lies {
  thing: Thing
  at: string | undefined
}

/**
 * Where a mistake may be stopped. `at once`: the wrong line itself. `next line`: another one while the step was under way, as when a bolt
 * was to be turned that is not there.
 */
export const PLACES = [
  'at once',
  'next line',
  'step closed',
  'next step',
  'last look',
  'second look',
  'last round',
  'last gate',
] as const

export type Where = (typeof PLACES)[number]

/**
 * What became of one mistake. `asked`: named in a question that holds up nothing. `unseen`: the first start was cleared over it.
 * `by chance`: nothing found it, and its step was put together anew because of another mistake.
 */
export type Fate =
  | { mistake: string; going: Going; came: 'stopped'; where: Where; refusal: string }
  | { mistake: string; going: Going; came: 'asked' | 'unseen' | 'by chance'; what: string }
