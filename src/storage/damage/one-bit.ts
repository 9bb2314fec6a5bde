import { CRC_BYTES, chainedCrc } from '../journal/line.ts'
import { BIT_EFFECTS, stepBack } from './crc-steps.ts'

/** One bit of a line. */
export interface Bit {
  offset: number
  bit: number
}

/**
 * Every single bit whose flip makes the checksum of a line right, after a line of that checksum. Within the entry
 * there is at most one, because CRC-32 tells any two single bits of up to 2^31 apart; one of the checksum's own digits,
 * or of the space behind them, may do as well. Takes as many steps as the line has bytes.
 */
export function singleFlips(line: Buffer, previousCrc: string): Bit[] {
  if (line.length <= CRC_BYTES + 1) return []
  const right = Buffer.from(`${chainedCrc(previousCrc, line.subarray(CRC_BYTES + 1))} `)
  const inHeader = differingBits(line.subarray(0, right.length), right)
  if (inHeader.length < 2) return inHeader
  const written = line.toString('latin1', 0, CRC_BYTES + 1)
  return /^[0-9a-f]{8} $/.test(written)
    ? inEntry(line.length, (Number.parseInt(written, 16) ^ Number.parseInt(right.toString(), 16)) >>> 0)
    : []
}

/** The line with that bit flipped. */
export function flipped(line: Buffer, { offset, bit }: Bit): Buffer {
  const copy = Buffer.from(line)
  copy[offset] = (copy[offset] ?? 0) ^ (1 << bit)
  return copy
}

/** What a wrong bit would have changed, followed back from the end of the line. */
function inEntry(length: number, difference: number): Bit[] {
  const found: Bit[] = []
  let register = difference
  for (let offset = length - 1; offset > CRC_BYTES; offset -= 1) {
    const bit = BIT_EFFECTS.indexOf(register)
    if (bit !== -1) found.push({ offset, bit })
    register = stepBack(register)
  }
  return found
}

/** All bits in which two texts of the same length differ; more than one is as good as many. */
function differingBits(one: Uint8Array, other: Uint8Array): Bit[] {
  const bits: Bit[] = []
  for (const [offset, byte] of one.entries()) {
    const differs = byte ^ (other[offset] ?? 0)
    for (let bit = 0; bit < 8; bit += 1) if (differs & (1 << bit)) bits.push({ offset, bit })
  }
  return bits
}
