import { crc32 } from 'node:zlib'
import { NewerEntry } from '../../journal/upgrades.ts'
import { parseJson } from '../files/parse-json.ts'

/** What every journal entry has, whatever else it tells: its number, from 1, and its id. */
export interface Numbered {
  n: number
  id: string
}

/** The place right after a line: that line's checksum, how many lines and bytes lie before. */
export interface LineEnd {
  crc: string
  line: number
  byte: number
}

export interface LinesRead<E> {
  entries: E[]
  /** How many of the bytes given are whole, right lines. */
  goodBytes: number
  lastCrc: string
  end: LineEnd
  problem: LineProblem | null
}

export type LineProblem = Torn | Damaged | Newer

/** The last line has no end: its writer was cut off, or is still writing. */
export interface Torn {
  kind: 'torn'
  line: number
  byteOffset: number
  bytes: number
}

/**
 * A line with an end that is not what was written, or not in its place.
 * `chain`: the line's own number shows that it does not follow the line before.
 */
export interface Damaged {
  kind: 'damaged'
  line: number
  byteOffset: number
  why: 'checksum' | 'chain' | 'too-long' | 'json' | 'shape' | 'sequence'
  /** The start of the line, fit to be shown. */
  text: string
  /** What the parser said, when it was the one to refuse. */
  cause?: unknown
}

/** A whole line in its place that tells an entry of a later program's version: it is read no further here. */
export interface Newer {
  kind: 'newer'
  line: number
  byteOffset: number
  /** The version of that entry. */
  version: number
  /** The newest version that is known here. */
  known: number
}

export const MAX_LINE_BYTES = 1024 * 1024

/** Before the first line. */
export const FILE_START: LineEnd = { crc: '00000000', line: 0, byte: 0 }

/**
 * One entry as a line: `crc SP json LF`. The checksum (CRC-32 of IEEE 802.3, eight hex digits) covers the checksum
 * of the line before and the JSON bytes, so the lines form a chain: none can be lost, doubled or moved unnoticed.
 * Throws when the entry has no JSON or more than 1 MiB of it.
 */
export function writeLine(previousCrc: string, entry: unknown): { text: string; crc: string } {
  const json = JSON.stringify(entry)
  if (json === undefined) throw new TypeError('an entry must be an object')
  const crc = chainedCrc(previousCrc, Buffer.from(json))
  const text = `${crc} ${json}\n`
  if (Buffer.byteLength(text) > MAX_LINE_BYTES) throw new RangeError('an entry must fit in 1 MiB')
  return { text, crc }
}

/**
 * Reads whole lines from `bytes`, which follow on `from`, up to the first that is not right. `parse` throws on a
 * shape it does not accept, NewerEntry on one of a later version. What is good is returned, frozen, whatever the problem.
 */
export function readLines<E extends Numbered>(
  bytes: Uint8Array,
  parse: (raw: unknown) => E,
  from: LineEnd = FILE_START,
): LinesRead<E> {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const entries: E[] = []
  let end = from
  let at = 0
  let problem: LineProblem | null = null
  while (at < buffer.length && problem === null) {
    const feed = buffer.indexOf(LINE_FEED, at)
    if (feed === -1) {
      problem = { kind: 'torn', line: end.line + 1, byteOffset: end.byte, bytes: buffer.length - at }
      break
    }
    const read = readLine(buffer.subarray(at, feed), parse, end)
    if ('kind' in read) {
      problem = read
    } else {
      entries.push(read.entry)
      end = { crc: read.crc, line: end.line + 1, byte: end.byte + feed + 1 - at }
      at = feed + 1
    }
  }
  return { entries, goodBytes: at, lastCrc: end.crc, end, problem }
}

const LINE_FEED = 0x0a
/** How many hex digits the checksum has, before the space. */
export const CRC_BYTES = 8
const SHOWN_CHARACTERS = 120

function readLine<E extends Numbered>(
  line: Buffer,
  parse: (raw: unknown) => E,
  before: LineEnd,
): { entry: E; crc: string } | Damaged | Newer {
  const number = before.line + 1
  const damaged = (why: Damaged['why'], cause?: unknown): Damaged => ({
    kind: 'damaged',
    line: number,
    byteOffset: before.byte,
    why,
    text: shown(line),
    ...(cause === undefined ? {} : { cause }),
  })

  if (line.length >= MAX_LINE_BYTES) return damaged('too-long')
  const json = line.subarray(CRC_BYTES + 1)
  const crc = chainedCrc(before.crc, json)
  if (line.toString('latin1', 0, CRC_BYTES + 1) !== `${crc} `) {
    const says = numberIn(json)
    return damaged(says === null || says === number ? 'checksum' : 'chain')
  }
  let raw: unknown
  try {
    raw = parseJson(json)
  } catch (cause) {
    return damaged('json', cause)
  }
  try {
    const entry = deepFreeze(parse(raw))
    return entry.n === number ? { entry, crc } : damaged('sequence')
  } catch (cause) {
    if (!(cause instanceof NewerEntry)) return damaged('shape', cause)
    const { version, known } = cause
    return { kind: 'newer', line: number, byteOffset: before.byte, version, known }
  }
}

/** The checksum, in hex, of a line with this JSON after a line of that checksum. */
export function chainedCrc(previousCrc: string, json: Uint8Array): string {
  return crc32(json, crc32(previousCrc)).toString(16).padStart(CRC_BYTES, '0')
}

/** The entry number that a line gives itself, from its JSON; null where none is legible. */
export function numberIn(json: Buffer): number | null {
  try {
    const value: unknown = JSON.parse(json.toString('utf8'))
    const n = typeof value === 'object' && value !== null && 'n' in value ? value.n : null
    return typeof n === 'number' && Number.isSafeInteger(n) && n > 0 ? n : null
  } catch {
    return null
  }
}

function deepFreeze<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value
  for (const inner of Object.values(value)) deepFreeze(inner)
  return Object.freeze(value)
}

function shown(line: Buffer): string {
  return line
    .toString('utf8', 0, SHOWN_CHARACTERS * 4)
    .replaceAll(/\p{C}/gu, '�')
    .slice(0, SHOWN_CHARACTERS)
}
