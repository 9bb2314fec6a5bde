import type { Drawing } from '../drawing.ts'
import { type DotTools, dottedSvg } from './bitmap.ts'

/**
 * The drawing as a PNG file that knows its resolution, so that it prints at its true size.
 * @throws RangeError when the modules of a symbol are no whole number of dots at that resolution.
 */
export function pngOf(drawing: Drawing, dpi: number, { typeface, rasteriser }: DotTools): Uint8Array {
  const png = rasteriser.png(dottedSvg(drawing, dpi, typeface))
  const resolution = resolutionChunk(dpi)
  const marked = new Uint8Array(png.length + resolution.length)
  marked.set(png.subarray(0, endOfHeader))
  marked.set(resolution, endOfHeader)
  marked.set(png.subarray(endOfHeader), endOfHeader + resolution.length)
  return marked
}

// The signature and the first chunk, IHDR, of 13 bytes: W3C PNG, 5.2 and 11.2.1.
const endOfHeader = 8 + 12 + 13

/** The chunk pHYs, dots to the metre in both directions: W3C PNG, 11.3.4.3. */
function resolutionChunk(dpi: number): Uint8Array {
  const chunk = new Uint8Array(21)
  const view = new DataView(chunk.buffer)
  const perMetre = Math.round(dpi / 0.0254)
  view.setUint32(0, 9)
  chunk.set(new TextEncoder().encode('pHYs'), 4)
  view.setUint32(8, perMetre)
  view.setUint32(12, perMetre)
  chunk[16] = 1
  view.setUint32(17, checksum(chunk.subarray(4, 17)))
  return chunk
}

/** CRC-32 as in ISO/IEC 3309, bit by bit: thirteen bytes need no table. */
function checksum(bytes: Uint8Array): number {
  let crc = 0xffffffff
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1
  }
  return ~crc >>> 0
}
