import type { Drive } from '../drive.ts'
import type { Thread } from '../thread.ts'
import type { FastenerClass } from '../torque/fastener-class.ts'
import type { State } from './state-words.ts'

/** What a run of words says about a piece. */
export type Saying = { used: number } & (
  | { says: 'name' }
  | { says: 'thread'; thread: Thread }
  /** Not sure: `E4`, `T8` and `slot` are a drive on a fastener only. */
  | { says: 'drive'; drive: Drive; isSure: boolean }
  /** Not sure: a bare `8.8`, which is a class on a bolt only. */
  | { says: 'class'; fastenerClass: FastenerClass; isSure: boolean }
  /** Alike: behind an `@`. */
  | { says: 'positions'; positions: string[]; isAlike: boolean }
  /** `all` of them; `lone` where the word stands alone, which is plain for a single piece only. */
  | { says: 'state'; state: State; count: number | 'all' | 'lone'; at?: string[]; detail?: string }
  | { says: 'single-use' | 'reuse' }
  | { says: 'washers'; text: string }
)

/** What a run of words says, and where it stands. */
export type PlacedSaying = Saying & { clause: number; from: number }

/** Where a run of words begins: its clause, its place in it, and the place where the clause begins. */
export interface At {
  clause: number
  from: number
  start: number
}
