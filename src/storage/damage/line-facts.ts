import { crc32 } from 'node:zlib'
import { CRC_BYTES, MAX_LINE_BYTES, numberIn } from '../journal/line.ts'
import { crcBefore } from './crc-steps.ts'

/** What a line says of itself, whether or not it is right. */
export interface LineFacts {
  n: number
  /** What the line before must have given for this one to follow it. */
  follows: number
  /** What this line gives to the one that follows it. */
  gives: number
}

/** Reads a line by itself; null where it is no checksum, space and entry with a number. */
export function factsOf(text: Buffer): LineFacts | null {
  const gives = givenBy(text)
  if (gives === null || text.length >= MAX_LINE_BYTES) return null
  const json = text.subarray(CRC_BYTES + 1)
  const n = numberIn(json)
  if (n === null) return null
  const written = Number.parseInt(text.toString('latin1', 0, CRC_BYTES), 16)
  return { n, follows: crcBefore(json, written), gives }
}

/** What a line gives to the next by its checksum alone, be the rest of it right or not; null without a legible one. */
export function givenBy(text: Buffer): number | null {
  const header = text.toString('latin1', 0, CRC_BYTES + 1)
  return /^[0-9a-f]{8} $/.test(header) ? gives(header.slice(0, CRC_BYTES)) : null
}

/** What a line of that checksum gives to the next: each line's checksum goes on from this. */
export function gives(crc: string): number {
  return crc32(crc)
}
