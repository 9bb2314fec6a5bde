import type { Entry } from '../journal/entry.ts'
import { lawfulPart } from '../journal/lawful-part.ts'

export { picturesIn } from '../journal/recorded-pictures.ts'
export type { Behind, Examination, Finding } from '../storage/damage/finding.ts'
export type { Mending } from '../storage/journal/mend-journal.ts'
export type { Concern } from '../storage/surroundings.ts'
export { lawfulPart }

/** The number of the first entry that does not follow from those before it; null when all of them do. */
export function firstUnlawful(entries: readonly Entry[]): number | null {
  return lawfulPart(entries).unlawful?.n ?? null
}
