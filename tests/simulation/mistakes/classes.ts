import type { Chance } from '../../support/damage/chance.ts'
import type { Act } from '../job/act.ts'
import type { Known } from '../job/known.ts'
import type { Machine } from '../machines/machine.ts'
import type { Going } from './mistake.ts'

/** A kind of mistake: where it can be made, and what is done instead of the right thing. */
export interface MistakeClass {
  name: string
  group: 'omission' | 'wrong installation' | 'wrong part' | 'other'
  /** Of 100 mistakes; `src` says what the share rests on. */
  weight: number
  from: string
  going: Going
  /** The acts, by their places in the list, that are done otherwise when it is made at this place; null where it cannot be made. */
  at(acts: readonly Act[], place: number, machine: Machine): Made | null
}

/** What happens in place of some acts. */
export interface Made {
  /** How many acts from that place on are not done as they should be. */
  acts: number
  /** What is said in their place, one line after the other. */
  says(known: Known, chance: Chance): string[]
  /** What is done to put it right once it is named. */
  cure: readonly Act[]
  subjects(known: Known): string[]
}
