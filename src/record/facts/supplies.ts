import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { PieceId } from '../../ledger/piece.ts'

/** New pieces: in place of an old one, or for a home that was short. */
export interface Supply {
  fresh: PieceId
  /** The piece whose home it took; null where more of the same came. */
  old: PieceId | null
  count: number
  entry: EntryOf<'supplied'>
}

/** Everything that was supplied, in its order. */
export function suppliesOf(entries: readonly Entry[]): Supply[] {
  return entries
    .filter((entry) => entry.type === 'supplied')
    .flatMap((entry) =>
      entry.openings.map(({ piece, count }) => ({
        fresh: piece,
        old: entry.pieces.find(({ id }) => id === piece)?.replaces ?? null,
        count,
        entry,
      })),
    )
}
