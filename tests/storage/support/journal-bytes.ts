import { writeLine } from '../../../src/storage/journal/line.ts'

/** A journal of these entries as it stands on the disk. */
export function fileOf(entries: readonly object[]): Buffer {
  let crc = '00000000'
  const lines = entries.map((entry) => {
    const line = writeLine(crc, entry)
    crc = line.crc
    return line.text
  })
  return Buffer.from(lines.join(''))
}

/** Its lines, each with its end. */
export function linesOf(bytes: Buffer): Buffer[] {
  const lines: Buffer[] = []
  for (let at = 0; at < bytes.length; ) {
    const feed = bytes.indexOf(0x0a, at)
    const end = feed === -1 ? bytes.length : feed + 1
    lines.push(bytes.subarray(at, end))
    at = end
  }
  return lines
}
