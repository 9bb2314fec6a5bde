import exifr from 'exifr'
import { type ExifTimes, readTaken, type Taken } from './capture-time.ts'
import { type PictureFormat, readFormat } from './picture-format.ts'

export type PictureReading =
  | { kind: 'picture'; format: PictureFormat; taken: Taken | null }
  | { kind: 'broken'; why: 'cut-short' | 'damaged' | 'too-many-pixels' }
  | { kind: 'heif' }
  | { kind: 'other' }

/**
 * The most pixels that are decoded. A small file can unfold to more memory than there is; the largest sensors of
 * phones have 200 million.
 */
const MOST_PIXELS = 220_000_000

/** Reads what a file is and when it was taken, from all of its bytes. An EXIF block that makes no sense says nothing. */
export async function readPicture(bytes: Uint8Array): Promise<PictureReading> {
  const reading = readFormat(bytes)
  if (reading.kind !== 'picture') return reading
  const { format, width, height } = reading
  if (width * height > MOST_PIXELS) return { kind: 'broken', why: 'too-many-pixels' }
  return { kind: 'picture', format, taken: readTaken(await exifTimes(bytes)) }
}

async function exifTimes(bytes: Uint8Array): Promise<ExifTimes> {
  try {
    // Revived values would be put into the time zone of this machine, whatever the offset beside them says.
    return (await exifr.parse(bytes, OPTIONS)) ?? {}
  } catch {
    return {}
  }
}

const OPTIONS = {
  reviveValues: false,
  translateValues: false,
  ifd0: { pick: ['ExifIFD'] },
  exif: { pick: ['DateTimeOriginal', 'SubSecTimeOriginal', 'OffsetTimeOriginal'] },
  gps: false,
  interop: false,
  ifd1: false,
  xmp: false,
  icc: false,
  iptc: false,
  jfif: false,
  ihdr: false,
}
