import type { Bitmap } from './bitmap.ts'
import { checkRollJob, type RollJob } from './roll-job.ts'

/**
 * The labels in the escape commands of receipt printers, as pictures in bands, each cut off.
 * @throws RangeError when a label is wider than the printer prints, or the copies are no count.
 */
export function receiptRollBytes(
  bitmaps: readonly Bitmap[],
  { copies = 1, widest = Number.POSITIVE_INFINITY }: RollJob = {},
): Uint8Array<ArrayBuffer> {
  checkRollJob(bitmaps, copies, widest)
  const copied = bitmaps.flatMap((bitmap) => {
    const label = labelBytes(bitmap)
    return Array.from({ length: copies }, () => label)
  })
  return joined([reset, ...copied.flat()])
}

const [esc, gs] = [0x1b, 0x1d]
const reset = Uint8Array.of(esc, 0x40)
// Four lines bring the label out from under the head, where there is no cutter.
const feed = Uint8Array.of(esc, 0x64, 4)
const cut = Uint8Array.of(gs, 0x56, 66, 0)
// A band fits the memory of small printers, and its height into one byte.
const bandRows = 128

function labelBytes({ height, rowBytes, dots }: Bitmap): Uint8Array[] {
  const bands: Uint8Array[] = []
  for (let top = 0; top < height; top += bandRows) {
    const rows = Math.min(bandRows, height - top)
    const picture = withoutRealTime(dots.slice(top * rowBytes, (top + rows) * rowBytes))
    bands.push(Uint8Array.of(gs, 0x76, 0x30, 0, rowBytes & 0xff, rowBytes >> 8, rows, 0), picture)
  }
  return [...bands, feed, cut]
}

/**
 * Printers act on real-time commands (DLE before EOT, ENQ or DC4: report, recover, open the drawer, switch off)
 * even in the midst of a picture. One dot more beside the lone one in DLE breaks them; no symbol has a lone dot.
 */
function withoutRealTime(picture: Uint8Array): Uint8Array {
  for (const [index, byte] of picture.entries()) {
    if (byte === 0x10 && [0x04, 0x05, 0x14].includes(picture[index + 1] ?? 0)) picture[index] = 0x18
  }
  return picture
}

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    bytes.set(part, at)
    at += part.length
  }
  return bytes
}
