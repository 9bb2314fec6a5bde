import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { FaultFacts, FaultKind } from '../../plan/facts.ts'

/** What was not in order when it came off. */
export interface Arrival {
  missing: { piece: PieceId; count: number; should: number; entry: EntryOf<'came-off'> }[]
  broken: { piece: PieceId; count: number; kind: FaultKind; entry: EntryOf<'came-off'> }[]
  /** Work that something broken left at its home, and the entry that says how it was put right. */
  faults: { fault: FaultFacts; settled: EntryOf<'settled'> | null }[]
}

/** Gathers what was missing and what was broken as found. */
export function arrivalOf(state: State, entries: readonly Entry[]): Arrival {
  const cameOff = entries.filter((entry) => entry.type === 'came-off')
  return {
    missing: cameOff.flatMap((entry) =>
      entry.pieces.flatMap(({ id, should }) => {
        const found = entry.openings.find(({ piece }) => piece === id)?.count ?? 0
        return found < should ? [{ piece: id, count: should - found, should, entry }] : []
      }),
    ),
    broken: cameOff.flatMap((entry) =>
      entry.moves
        .filter(({ to }) => to === 'scrap')
        .map(({ piece, count }) => ({
          piece,
          count,
          kind: entry.faults?.find((fault) => fault.piece === piece)?.kind ?? ('broken' as const),
          entry,
        })),
    ),
    faults: [...state.faults.values()].map((fault) => ({
      fault,
      settled:
        entries.find(
          (entry): entry is EntryOf<'settled'> => entry.type === 'settled' && entry.fault === fault.id,
        ) ?? null,
    })),
  }
}
