import type { Result } from '../../../src/cli/result.ts'
import type { Entry } from '../../../src/journal/entry.ts'
import type { Heed } from '../../../src/session/heeds.ts'
import type { Chance } from '../../support/damage/chance.ts'
import type { Act } from '../job/act.ts'
import type { Known } from '../job/known.ts'
import type { Machine, Thing } from '../machines/machine.ts'
import type { Defect, Going, Lies } from './mistake.ts'
import type { Share } from './shares.ts'

/** A kind of mistake: where it can be made, and what is done instead of the right thing. */
export interface MistakeClass extends Share {
  name: string
  going: Going
  /** What happens when it is made at this place of the list; null where it cannot be made. */
  at(acts: readonly Act[], place: number, machine: Machine): Made | null
}

/** What happens in place of some acts. */
export interface Made {
  /** How many acts from that place on are not done as they should be; at least one. */
  acts: number
  /** What is said in their place, one line after the other. */
  says(known: Known, chance: Chance): string[]
  /** What is done to put it right once it is named. */
  cure: readonly Act[]
  subjects(known: Known): string[]
  /** What still lies about when it is ticked. */
  lies?: Lies | undefined
  /** Acts that the tool makes one do, in which it is before one's eyes. */
  shows?: (act: Act) => boolean
  /** Of what is said wrongly: the code under which the tool stops it in its answer, null where it does not. A refusal by itself. */
  stops?: (result: Result) => string | null
  /** What the lines are about, where the acts do not say it. */
  about?: Thing | undefined
  /** Of what is taken though it is wrong: whether the acts are done and said all the same. */
  isDoneAnyway?: boolean
  /** Questions that hold up nothing and are about just this. */
  askedBy?: readonly Heed['heed'][]
  /** Acts that are never said from then on. */
  silences?: (act: Act) => boolean
  /** Of work that broke off: what the mistake is where the slip was taken, by what was recorded. */
  taken?: (entries: readonly Entry[], defect: Defect) => Defect
  /** Of work that broke off in an angle: whether the bolt in doubt had been turned. */
  wasTurned?: boolean
}
