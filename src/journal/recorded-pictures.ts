import type { Entry, Picture } from './entry.ts'

/** The pictures that entries added; those taken back as well, for an undo may be taken back itself. */
export function picturesIn(entries: readonly Entry[]): Picture[] {
  return entries.flatMap((entry) => (entry.type === 'pictures-added' ? entry.pictures : []))
}
