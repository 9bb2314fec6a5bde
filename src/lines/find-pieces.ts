import type { PieceId } from '../ledger/piece.ts'
import { readPositions } from '../trade/positions.ts'
import { findPieces, type Prefer } from './find-piece.ts'
import type { Line } from './line.ts'

/**
 * The pieces of a list: `head, cam caps`, `cam caps I1, I2`, `shims I1..I4 and p7`. Words that name a whole set mean all of
 * it; a part of the list that is only a position goes on with the name before it. The question which, where the words of one
 * part name several things.
 */
export function piecesOf(line: Line, text: string, ...prefer: Prefer[]): PieceId[] {
  const found: PieceId[] = []
  let before = ''
  for (const part of partsOf(line, text, prefer)) {
    const words = isPosition(part) && before !== '' ? `${before} ${part}` : part
    found.push(...oneThing(line, words, prefer))
    before = words === part ? nameOf(part) : before
  }
  if (found.length === 0) line.missing('PIECE')
  return [...new Set(found)]
}

/** Pieces with their numbers: `cylinder head, 4 head nuts`. All of a piece where no number is said. */
export function countedPieces(
  line: Line,
  text: string,
  ...prefer: Prefer[]
): { piece: PieceId; count?: number | undefined }[] {
  const found: { piece: PieceId; count?: number | undefined }[] = []
  let uncounted: string[] = []
  const takeUncounted = () => {
    if (uncounted.length > 0)
      found.push(...piecesOf(line, uncounted.join(', '), ...prefer).map((piece) => ({ piece })))
    uncounted = []
  }
  for (const part of text.split(/\s*,\s*|\s+and\s+/i)) {
    const [, number, words = ''] = /^(\d{1,4}) (.+)$/.exec(part) ?? []
    if (number === undefined || !namesAny(line, words)) uncounted.push(part)
    else {
      takeUncounted()
      found.push({ piece: line.piece(words, ...prefer), count: Number(number) })
    }
  }
  takeUncounted()
  if (found.length === 0) line.missing('PIECE')
  return found
}

/** Whether words name anything at all. */
export function namesAny(line: Line, words: string): boolean {
  return findPieces(words, line.state).length > 0
}

/** All pieces of the one thing, or the one set, that words name. */
export function oneThing(line: Line, words: string, prefer: Prefer[]): PieceId[] {
  const pieces = line.pieces(words, ...prefer)
  const sets = new Set(pieces.map((id) => setOf(line, id)))
  return sets.size > 1 ? line.which(words, pieces) : pieces
}

function setOf(line: Line, id: PieceId): string {
  const account = line.account(id)
  const { piece, home } = account ?? {}
  if (!piece || home?.position === undefined) return id
  return `${piece.set ?? piece.name} ${home.at} ${piece.step}`
}

function partsOf(line: Line, text: string, prefer: Prefer[]): string[] {
  // A part may have the word in its name: `bucket and shim`.
  if (/ and /i.test(text) && findPieces(text, line.state, ...prefer).length > 0) return [text]
  return text
    .split(/\s*,\s*|\s+and\s+/i)
    .flatMap(spreadRange)
    .map((part) => part.trim())
    .filter((part) => part !== '')
}

/** `shims I1..I4` is four of them. */
function spreadRange(part: string): string[] {
  const [, name = '', range] =
    /^(.*?)\s*((?:[a-z]{0,3}\d{1,3})(?:\.{2,3}|…)(?:[a-z]{0,3}\d{1,3}))$/i.exec(part) ?? []
  const positions = range === undefined ? undefined : readPositions(range)
  return positions?.understood ? positions.value.map((position) => `${name} ${position}`.trim()) : [part]
}

function isPosition(part: string): boolean {
  return /^(?!p\d)[a-z]{0,3}\d{1,3}[a-z]?$/i.test(part)
}

/** The name of a piece without the position behind it. */
function nameOf(part: string): string {
  return part.replace(/\s+[a-z]{0,3}\d{1,3}[a-z]?$/i, '')
}
