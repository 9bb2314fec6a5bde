import type { PieceId } from '../ledger/piece.ts'
import type { Line } from './line.ts'

/** Any one piece of the set, or of the hose with its ends, that words name; a question where they name several. */
export function oneOfSet(line: Line, words: string): PieceId {
  const pieces = line.pieces(words)
  const sets = new Set(pieces.map((id) => setOf(line, id)))
  const [first] = pieces
  return sets.size > 1 || first === undefined ? line.which(words, pieces) : first
}

function setOf(line: Line, id: PieceId): string {
  const { piece } = line.account(id) ?? {}
  return piece?.set ?? piece?.name ?? id
}
