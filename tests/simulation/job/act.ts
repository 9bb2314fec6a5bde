import type { Thing } from '../machines/machine.ts'
import type { Known } from './known.ts'

/** What a mechanic does, by the kinds that mistakes are made at. */
export type Doing =
  | 'begin'
  | 'open'
  | 'off'
  | 'mark'
  | 'draw'
  | 'end'
  | 'ask'
  | 'judge'
  | 'supply'
  | 'compare'
  | 'dispose'
  | 'plan'
  | 'extra'
  | 'scan'
  | 'count'
  | 'correct'
  | 'look'
  | 'take'
  | 'put on'
  | 'fit'
  | 'confirm'
  | 'set passes'
  | 'turn'
  | 'take out'
  | 'fill'
  | 'done'
  | 'see again'
  | 'round'
  | 'clear'

/** One thing done with the hands, and the line that is said of it. */
export interface Act {
  doing: Doing
  /** The number of its step in the record; 0 where it belongs to none. */
  step: number
  thing?: Thing | undefined
  /** Of a matched set, a hose or a tightening: which of it. */
  at?: string | undefined
  /** Of a tightening: the stage, from 0. */
  pass?: number | undefined
  /** Whether there is nothing to do after all, by what the record said meanwhile. */
  isNeedless?: ((known: Known) => boolean) | undefined
  /** What is said, in the words of the record as it is known then. */
  say(known: Known): string
}
