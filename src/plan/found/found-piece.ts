import type { Account } from '../../ledger/account.ts'
import type { PieceItem } from '../../trade/bag-line/bag-item.ts'
import { wordsOf } from '../../trade/bag-line/name-words.ts'
import {
  type Agrees,
  type SizeAgreement,
  type SizeInHand,
  sizeAgreement,
} from '../../trade/size-agreement.ts'
import { readSize } from '../../trade/size-text.ts'

/** What is known of a piece that turned up: as much or as little as a look, a rule and a wrench say. */
export interface FoundPiece extends SizeInHand {
  /** What it looks like, in the user's words. */
  name?: string | undefined
}

/** In what a found piece agrees with one of the record. `partly`: some of the words. */
export interface FoundAgreement extends SizeAgreement {
  name: Agrees | 'partly'
  /** How many of the words are said of the piece, of its place or of its set. */
  words: number
}

/** What is known of a found piece that was told as a bag line is written: `1 M6x25 hex 10 cover bolt`. */
export function foundPiece(item: PieceItem): FoundPiece {
  const { name, positions = [], thread, fastenerClass, drive } = item
  return { name: [name, ...positions].join(' '), thread, fastenerClass, drive }
}

/** In what a found piece agrees with a piece of the record. */
export function foundAgreement(found: FoundPiece, { piece, home }: Account): FoundAgreement {
  const asked = new Set(comparable(found.name ?? ''))
  const own = new Set([piece.name, piece.set ?? '', home.at, home.position ?? ''].flatMap(comparable))
  const words = [...asked].filter((word) => own.has(word)).length
  return {
    ...sizeAgreement(found, readSize(piece.size ?? '')),
    name: asked.size === 0 ? 'unknown' : words === asked.size ? 'yes' : words > 0 ? 'partly' : 'no',
    words,
  }
}

/**
 * Whether a found piece may be one of these. What is known to differ in thread or length is not; another drive, class or
 * name is a matter of how it was looked at. Where nothing agrees, fasteners are left whose size does not contradict: a
 * cover that shares a word with its bolts is no bolt.
 */
export function mayBe(found: FoundPiece, agrees: FoundAgreement, { piece }: Account): boolean {
  const { thread, pitch, length, name } = agrees
  if ([thread, pitch, length].includes('no')) return false
  const measured = measuredIn(agrees)
  if (measured.includes('yes')) return true
  const { lengthMm, fastenerClass, drive } = found
  const isMeasured = [found.thread, lengthMm, fastenerClass, drive].some((each) => each !== undefined)
  if (!isMeasured) return name === 'yes' || name === 'partly'
  if (piece.kind !== 'fastener') return name === 'yes' && nounOf(found.name ?? '') === nounOf(piece.name)
  return name === 'yes' || name === 'partly' || !measured.includes('no')
}

/** How much was measured alike, less what was measured otherwise. */
export function measuredAlike(agrees: FoundAgreement): number {
  const told = (as: Agrees) => measuredIn(agrees).filter((each) => each === as).length
  return told('yes') - told('no')
}

function measuredIn({ thread, pitch, length, fastenerClass, drive }: FoundAgreement): Agrees[] {
  return [thread, pitch, length, fastenerClass, drive]
}

const EMPTY_WORDS = new Set(['the', 'a', 'an', 'of', 'at', 'on', 'for', 'with', 'from'])
// Common practice: what one calls a bolt another calls a screw.
const BOLT_WORDS = new Set(['screw', 'capscrew', 'setscrew', 'fastener'])

function nounOf(name: string): string | undefined {
  return comparable(name).at(-1)
}

/** Words that count, in the singular; what some call a screw is a bolt. */
function comparable(text: string): string[] {
  return wordsOf(text, EMPTY_WORDS).map((word) => (BOLT_WORDS.has(word) ? 'bolt' : word))
}
