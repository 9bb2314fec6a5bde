import type { Entry } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { entryText } from '../../words/entries.ts'
import type { LabelCode } from '../../words/leftovers.ts'
import { countedPiece } from '../../words/pieces.ts'
import { type Line, line } from './line.ts'

/** What every part of the record is told with. */
export interface Telling {
  state: State
  /** An entry's time as it is shown. */
  when: (at: string) => string
  code: LabelCode
}

/** A fact with the number of its entry, when, and by whom: `  12  2026-05-02 14:03  [Kim] came off: ...`. */
export function dated({ when }: Telling, { n, at, by }: Entry, text: string, indent = 2): Line {
  const lead = `${' '.repeat(indent)}${String(n).padStart(4)}  ${when(at)}  `
  return { lead, text: by === undefined ? text : `[${by}] ${text}`, hang: indent + 6 }
}

/** An entry told as history. */
export function history(telling: Telling, entry: Entry, indent = 2): Line {
  return dated(telling, entry, entryText(telling.state, entry), indent)
}

/** A number of a piece, said also where it is one: `1 × cam cap I3`. */
export function numbered(state: State, piece: PieceId, count: number): string {
  const text = countedPiece(state, piece, count)
  const isMatched = state.ledger.accounts.get(piece)?.home.position !== undefined
  return isMatched && count === 1 ? `1 × ${text}` : text
}

/** The lines under a title, or that there are none. */
export function orNone(lines: readonly Line[], none: string, indent = 2): Line[] {
  return lines.length > 0 ? [...lines] : [line(none, indent)]
}

/** An entry with only those of its moves that are meant, where the rest is told elsewhere. */
export function withMoves(entry: Entry, isMeant: (piece: PieceId) => boolean): Entry {
  if (entry.type !== 'reopened' && entry.type !== 'failed') return entry
  return { ...entry, moves: entry.moves.filter(({ piece }) => isMeant(piece)) }
}
