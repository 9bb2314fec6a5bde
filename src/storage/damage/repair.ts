import { crc32 } from 'node:zlib'
import { parseJson } from '../files/parse-json.ts'
import { CRC_BYTES, chainedCrc, type Numbered } from '../journal/line.ts'
import { flipped, singleFlips } from './one-bit.ts'
import type { Piece } from './pieces.ts'

/** A line found again, what of the pieces it was made of, and what of the first of them is left over. */
export interface Repaired {
  text: Buffer
  /** How many pieces were used up. */
  used: 1 | 2
  /** What follows in the same piece, where the flipped bit was in the line feed between them. */
  left: Piece | null
  how: 'flipped' | 'unended'
}

export interface Place<E> {
  /** The whole file. */
  bytes: Buffer
  /** Where the line must be, and what stands behind it. */
  piece: Piece
  next: Piece | undefined
  previousCrc: string
  /** The number of the entry that it must be. */
  n: number
  /** Throws on a shape that it does not accept. */
  parse: (raw: unknown) => E
}

/**
 * Finds the line that must stand at a place, from what stands there now: the one change of a single bit after which
 * checksum, JSON, shape and number agree. The bit may lie in the entry, in the checksum, in the line feed, or have
 * made a line feed of something else. Null where there is no such change, or more than one.
 */
export function repairAt<E extends Numbered>(place: Place<E>): Repaired | null {
  const { piece, previousCrc } = place
  if (!piece.hasFeed && isWhole(piece.text, previousCrc))
    return { text: piece.text, used: 1, left: null, how: 'unended' }
  const found = [...inside(place), ...joined(place), ...parted(place)].filter(({ text }) =>
    isEntry(text, place),
  )
  const [only, another] = found
  return only && !another ? only : null
}

/** The bit is in the piece itself. */
function inside<E>({ piece, previousCrc }: Place<E>): Repaired[] {
  return singleFlips(piece.text, previousCrc)
    .map((bit) => flipped(piece.text, bit))
    .filter((text) => !text.includes(LINE_FEED))
    .map((text) => ({ text, used: 1, left: null, how: 'flipped' }))
}

/** The bit made the line feed that parts the piece from the next. */
function joined<E>({ bytes, piece, next, previousCrc }: Place<E>): Repaired[] {
  const feed = piece.start + piece.text.length
  if (!next || next.start !== feed + 1 || bytes[feed] !== LINE_FEED) return []
  const window = bytes.subarray(piece.start, next.start + next.text.length)
  return singleFlips(window, previousCrc)
    .filter(({ offset }) => offset === piece.text.length)
    .map((bit) => ({ text: flipped(window, bit), used: 2, left: null, how: 'flipped' }))
}

/** The bit was in the line feed, so that the piece is this line and the next. */
function parted<E>({ piece, previousCrc }: Place<E>): Repaired[] {
  const { text } = piece
  const header = text.toString('latin1', 0, CRC_BYTES + 1)
  const found: Repaired[] = []
  let crc = crc32(previousCrc)
  let from = CRC_BYTES + 1
  for (let at = from; at < text.length; at += 1) {
    if (!NEARLY_FEEDS.has(text[at] ?? 0) || text[at - 1] !== CLOSING_BRACE) continue
    // Each stretch is gone over once, however many bytes look like a line feed.
    crc = crc32(text.subarray(from, at), crc)
    from = at
    if (`${crc.toString(16).padStart(CRC_BYTES, '0')} ` !== header) continue
    const rest = { ...piece, start: piece.start + at + 1, text: text.subarray(at + 1) }
    found.push({
      text: text.subarray(0, at),
      used: 1,
      left: rest.text.length > 0 ? rest : null,
      how: 'flipped',
    })
  }
  return found
}

/** Whether a text follows on a checksum as it stands. */
export function isWhole(text: Buffer, previousCrc: string): boolean {
  return (
    text.toString('latin1', 0, CRC_BYTES + 1) === `${chainedCrc(previousCrc, text.subarray(CRC_BYTES + 1))} `
  )
}

function isEntry<E extends Numbered>(text: Buffer, { n, parse }: Place<E>): boolean {
  try {
    return parse(parseJson(text.subarray(CRC_BYTES + 1))).n === n
  } catch {
    return false
  }
}

const LINE_FEED = 0x0a
const CLOSING_BRACE = 0x7d
/** One bit away from a line feed. */
const NEARLY_FEEDS = new Set(Array.from({ length: 8 }, (_, bit) => LINE_FEED ^ (1 << bit)))
