import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import { asideWords, usedWords } from './cures.ts'
import { liesAt } from './lookups.ts'
import { agree, liesText, pieceName } from './pieces.ts'

/** Why a used piece does not go back, and what does: `seal was used: the new one is p7, on the bench`. */
export function notAgainText(state: State, piece: PieceId, by: PieceId | null): string {
  const name = `${pieceName(state, piece)} ${agree(state, piece, 'was', 'were')} used once`
  if (by === null) return `${name}: ${usedWords(state, piece)}`
  const [lying] = liesAt(state, piece)
  const away = lying ? `; ${asideWords(state, piece, lying.place)}` : ''
  return `${name}: ${by} goes in, ${liesText(state, by)}${away}`
}
