import type { PartKind } from './name-ends.ts'

/** How a part is checked: cleaned, looked at, measured, or held beside its fellows or its mate. */
export type CheckKind = 'clean' | 'look' | 'measure' | 'compare'

/** One way of checking a part. What it is measured against is never said: the machine's service manual has it. */
export interface Check {
  kind: CheckKind
  /** What to clean, what to look for, what to measure, or what to compare. */
  what: string[]
}

/** The checks of one kind of thing, as a table has them. */
export type Checks = Partial<Record<CheckKind, readonly string[]>>

/** A part of the table: each file has the kinds of one group. */
export type ChecksTable = Partial<Record<PartKind, Checks>>
