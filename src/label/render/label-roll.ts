import type { Bitmap } from './bitmap.ts'
import { checkRollJob, type RollJob } from './roll-job.ts'

/**
 * The labels in the caret commands of label-roll printers, each as one picture in hexadecimal digits: no text of a
 * label ever stands where the printer reads commands.
 * @throws RangeError when a label is wider than the printer prints, or the copies are no count.
 */
export function labelRollBytes(
  bitmaps: readonly Bitmap[],
  { copies = 1, widest = Number.POSITIVE_INFINITY }: RollJob = {},
): Uint8Array<ArrayBuffer> {
  checkRollJob(bitmaps, copies, widest)
  const labels = bitmaps.map((bitmap) => `${labelCommands(bitmap, copies).join('\n')}\n`)
  return new TextEncoder().encode(labels.join(''))
}

function labelCommands({ width, height, rowBytes, dots }: Bitmap, copies: number): string[] {
  return [
    '^XA',
    `^PW${width}`,
    `^LL${height}`,
    // An origin that an earlier job set would still hold.
    '^LH0,0',
    `^FO0,0^GFA,${dots.length},${dots.length},${rowBytes},${hexadecimal(dots)}^FS`,
    `^PQ${copies}`,
    '^XZ',
  ]
}

function hexadecimal(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).toUpperCase().padStart(2, '0')).join('')
}
