import type { BagFault, BagItem } from './bag-item.ts'

/** What one part of a line, between semicolons, comes to. */
export type Outcome = { items: BagItem[] } | Fault

export interface Fault {
  code: BagFault
  part: string
  /** Forms that may be meant, the nearest first; not yet tried whether they are understood. */
  nearest: string[]
}

/** A part of a line that is not understood, with what may be meant instead, the nearest first. */
export function fault(code: BagFault, part: string, ...nearest: string[]): Fault {
  return { code, part, nearest }
}

/** Whether a reading is a fault; every other reading has no `nearest`. */
export function isFault<Value extends object>(reading: Value | Fault): reading is Fault {
  return 'nearest' in reading
}
