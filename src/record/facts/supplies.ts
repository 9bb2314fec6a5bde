import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { ComparisonFacts } from '../../plan/judging/judging-facts.ts'

/** New pieces: in place of an old one, or for a home that was short. */
export interface Supply {
  fresh: PieceId
  /** The piece whose home it took; null where more of the same came. */
  old: PieceId | null
  count: number
  entry: EntryOf<'supplied'>
  /** Held beside the old one, where that was to be done. */
  comparison: ComparisonFacts | null
  compared: EntryOf<'compared'>[]
}

/** Everything that was supplied, in its order. */
export function suppliesOf({ comparisons }: State, entries: readonly Entry[]): Supply[] {
  const compared = entries.filter((entry) => entry.type === 'compared')
  return entries
    .filter((entry) => entry.type === 'supplied')
    .flatMap((entry) =>
      entry.openings.map(({ piece, count }) => ({
        fresh: piece,
        old: entry.pieces.find(({ id }) => id === piece)?.replaces ?? null,
        count,
        entry,
        // What came later of the same piece was not compared anew.
        comparison: (begins(entry, piece) && comparisons.get(piece)) || null,
        compared: begins(entry, piece) ? compared.filter((each) => each.piece === piece) : [],
      })),
    )
}

function begins({ compare = [] }: EntryOf<'supplied'>, piece: PieceId): boolean {
  return compare.some((each) => each.piece === piece)
}
