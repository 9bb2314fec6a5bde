import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { OutingFacts } from '../../plan/waiting/waiting-facts.ts'

/** What went out of the house together, and how it came back. */
export interface OutingRecord {
  outing: OutingFacts
  entries: EntryOf<'sent-out' | 'came-back'>[]
  /** What is not back. */
  away: { piece: PieceId; count: number }[]
}

/** Everything that went out, in its order. */
export function outingsOf({ outings }: State, entries: readonly Entry[]): OutingRecord[] {
  return [...outings.values()].map((outing) => ({
    outing,
    entries: entries.filter(
      (entry): entry is OutingRecord['entries'][number] =>
        (entry.type === 'sent-out' && entry.outing.id === outing.id) ||
        (entry.type === 'came-back' && entry.outing === outing.id),
    ),
    away: outing.pieces.flatMap(({ piece, away }) => (away > 0 ? [{ piece, count: away }] : [])),
  }))
}
