import jpeg from 'jpeg-js'
import { PNG } from 'pngjs'
import { type ExifFacts, exifBlock } from './exif.ts'
import type { Pixels } from './scene.ts'

/** The pixels as a JPEG file, with an EXIF block where there is something to say in it. */
export function jpegOf(pixels: Pixels, exif?: ExifFacts, quality = 85): Uint8Array {
  const { data } = jpeg.encode({ ...pixels, data: Buffer.from(pixels.data) }, quality)
  return exif ? withApp1(data, exifBlock(exif)) : new Uint8Array(data)
}

/** The pixels as a PNG file; an `eXIf` chunk (PNG third edition, 11.3.4.5) where there is something to say in it. */
export function pngOf(pixels: Pixels, exif?: ExifFacts): Uint8Array {
  const png = new PNG({ width: pixels.width, height: pixels.height })
  png.data = Buffer.from(pixels.data)
  const bytes = PNG.sync.write(png)
  if (!exif) return new Uint8Array(bytes)
  const afterHeader = 8 + 25
  return Uint8Array.from([
    ...bytes.subarray(0, afterHeader),
    ...pngChunk('eXIf', exifBlock(exif)),
    ...bytes.subarray(afterHeader),
  ])
}

/** An APP1 segment right after the start of the image: marker, length with itself, `Exif` and two zeros (Exif 2.32, 4.7.2). */
export function withApp1(file: Uint8Array, tiff: Uint8Array): Uint8Array {
  const length = 2 + 6 + tiff.length
  const head = [0xff, 0xe1, length >> 8, length & 0xff, 0x45, 0x78, 0x69, 0x66, 0, 0]
  const whole = new Uint8Array(file.length + head.length + tiff.length)
  whole.set(file.subarray(0, 2))
  whole.set(head, 2)
  whole.set(tiff, 2 + head.length)
  whole.set(file.subarray(2), 2 + head.length + tiff.length)
  return whole
}

/** A chunk: length, type, data, CRC-32 over type and data (PNG third edition, 5.3). */
export function pngChunk(type: string, data: Uint8Array): Uint8Array {
  const chunk = Buffer.alloc(12 + data.length)
  chunk.writeUInt32BE(data.length, 0)
  chunk.write(type, 4, 'latin1')
  chunk.set(data, 8)
  chunk.writeUInt32BE(crcByTable(chunk.subarray(4, 8 + data.length)), 8 + data.length)
  return chunk
}

/** PNG third edition, annex D: the sample code, bit by bit. */
function crcByTable(bytes: Uint8Array): number {
  let crc = 0xffffffff
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? 0xedb88320 ^ (crc >>> 1) : crc >>> 1
  }
  return (crc ^ 0xffffffff) >>> 0
}
