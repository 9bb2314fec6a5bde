import type { PieceId } from '../ledger/piece.ts'
import { patternOf } from '../plan/pattern.ts'
import type { Line } from './line.ts'

/**
 * The pieces that words name, as one of the pattern they are all of: a set, or lots of one name at one home. Where they
 * are of several, the line ends with the question which.
 */
export function takePattern(line: Line, words: string): PieceId {
  return takeLots(line, words)[0]
}

/** The same with every lot that was meant, one piece for each: `cover bolts` of two lengths are two. */
export function takeLots(line: Line, words: string): [PieceId, ...PieceId[]] {
  const pieces = line.pieces(words, ({ should }) => should > 0)
  const [first] = pieces
  if (first === undefined) return line.which(words, pieces)
  if (pieces.length === 1) return [first]
  const pattern = patternOf(line.state, first)
  const all = 'code' in pattern ? [] : pattern.places.map(({ piece }) => piece)
  if (!pieces.every((piece) => all.includes(piece))) return line.which(words, pieces)
  const lots = new Map<string, PieceId>()
  for (const id of pieces) {
    const { set = id } = line.account(id)?.piece ?? {}
    if (!lots.has(set)) lots.set(set, id)
  }
  return [...lots.values()] as [PieceId, ...PieceId[]]
}
