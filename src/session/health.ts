import type { Entry, Picture } from '../journal/entry.ts'
import { fold, UnlawfulEntry } from '../journal/fold.ts'

export type { Behind, Examination, Finding } from '../storage/damage/finding.ts'
export type { Mending } from '../storage/mend-journal.ts'
export type { Concern } from '../storage/surroundings.ts'

/** The number of the first entry that does not follow from those before it; null when all of them do. */
export function firstUnlawful(entries: readonly Entry[]): number | null {
  try {
    fold(entries)
    return null
  } catch (error) {
    if (!(error instanceof UnlawfulEntry)) throw error
    // An earlier one may have passed only because it was taken back further on.
    return firstUnlawful(entries.slice(0, error.n - 1)) ?? error.n
  }
}

/** The pictures that a record names. */
export function picturesIn(entries: readonly Entry[]): Picture[] {
  return entries.flatMap((entry) => (entry.type === 'pictures-added' ? entry.pictures : []))
}
