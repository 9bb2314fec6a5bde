import { crc32 } from 'node:zlib'

export type PictureFormat = 'jpeg' | 'png'

/** What the bytes of a file are. `width` and `height` in pixels, as stored. */
export type FormatReading =
  | { kind: 'picture'; format: PictureFormat; width: number; height: number }
  | { kind: 'broken'; why: 'cut-short' | 'damaged' }
  /** A picture in the ISO/IEC 23008-12 container, which nothing here decodes. */
  | { kind: 'heif' }
  | { kind: 'other' }

/** How many bytes tell what a file is. */
export const MAGIC_BYTES = 32

/** What a file is by its first bytes, whatever its name says: at least `MAGIC_BYTES` of them, or the whole file. */
export function formatOf(start: Uint8Array): PictureFormat | 'heif' | 'other' {
  if (begins(start, JPEG)) return 'jpeg'
  if (begins(start, PNG)) return 'png'
  const [box, brand] = [latin1(start, 4, 8), latin1(start, 8, 12)]
  return box === 'ftyp' && HEIF_BRANDS.has(brand) ? 'heif' : 'other'
}

/**
 * Reads the frame of a picture: JPEG by its markers up to the end of the image (ITU-T T.81, annex B), PNG by its
 * chunks with their CRCs up to IEND (PNG third edition, 5). What follows the end is not looked at: phones append to it.
 */
export function readFormat(bytes: Uint8Array): FormatReading {
  const format = formatOf(bytes)
  if (format === 'heif' || format === 'other') return { kind: format }
  return format === 'jpeg' ? readJpeg(bytes) : readPng(bytes)
}

const JPEG = [0xff, 0xd8, 0xff]
const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
const HEIF_BRANDS = new Set(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1', 'avif'])

const CUT_SHORT: FormatReading = { kind: 'broken', why: 'cut-short' }
const DAMAGED: FormatReading = { kind: 'broken', why: 'damaged' }

function readJpeg(bytes: Uint8Array): FormatReading {
  let size: { width: number; height: number } | null = null
  let at = 2
  for (;;) {
    if (at + 4 > bytes.length) return CUT_SHORT
    if (bytes[at] !== 0xff) return DAMAGED
    const marker = bytes[at + 1] ?? 0
    // Markers may be preceded by any number of fill bytes.
    if (marker === 0xff) {
      at += 1
      continue
    }
    if (marker === END_OF_IMAGE) return DAMAGED
    const length = uint16(bytes, at + 2)
    if (length < 2) return DAMAGED
    if (at + 2 + length > bytes.length) return CUT_SHORT
    if (isStartOfFrame(marker)) {
      if (length < 8) return DAMAGED
      size = { height: uint16(bytes, at + 5), width: uint16(bytes, at + 7) }
    }
    at += 2 + length
    if (marker === START_OF_SCAN) break
  }
  if (!size || size.width === 0 || size.height === 0) return DAMAGED
  return hasEndOfImage(bytes, at) ? { kind: 'picture', format: 'jpeg', ...size } : CUT_SHORT
}

const END_OF_IMAGE = 0xd9
const START_OF_SCAN = 0xda

/** SOF0 to SOF15, between which lie three markers that are none. */
function isStartOfFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc
}

/** Within the coded data, a byte of ones is followed by a zero, so that no marker can be met by chance. */
function hasEndOfImage(bytes: Uint8Array, from: number): boolean {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    if (bytes[at + 1] === END_OF_IMAGE) return true
  }
  return false
}

function readPng(bytes: Uint8Array): FormatReading {
  let size: { width: number; height: number } | null = null
  for (let at = PNG.length; ; ) {
    if (at + 12 > bytes.length) return CUT_SHORT
    const length = uint32(bytes, at)
    const end = at + 12 + length
    if (end > bytes.length) return CUT_SHORT
    const type = latin1(bytes, at + 4, at + 8)
    if (crc32(bytes.subarray(at + 4, end - 4)) !== uint32(bytes, end - 4)) return DAMAGED
    if (type === 'IHDR' && length === 13)
      size = { width: uint32(bytes, at + 8), height: uint32(bytes, at + 12) }
    if (type === 'IEND') break
    at = end
  }
  return size && size.width > 0 && size.height > 0 ? { kind: 'picture', format: 'png', ...size } : DAMAGED
}

function begins(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte)
}

function uint16(bytes: Uint8Array, at: number): number {
  return ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0)
}

function uint32(bytes: Uint8Array, at: number): number {
  return uint16(bytes, at) * 0x10000 + uint16(bytes, at + 2)
}

function latin1(bytes: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...bytes.subarray(from, to))
}
