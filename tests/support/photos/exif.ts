/** What an EXIF block says. A text may be anything, so that hostile ones can be written. */
export interface ExifFacts {
  orientation?: number
  dateTimeOriginal?: string
  offsetTimeOriginal?: string
  subSecTimeOriginal?: string
  /** ASCII in IFD0, where cameras write what they are. */
  make?: string
  /** The other byte order. */
  bigEndian?: boolean
}

interface Field {
  tag: number
  type: number
  count: number
  value: Uint8Array
}

const ASCII = 2
const SHORT = 3
const LONG = 4

/**
 * A TIFF block as an APP1 segment holds it: header, IFD0 and Exif IFD (TIFF 6.0, section 2; CIPA DC-008 Exif 2.32,
 * 4.6.3 with the tags Orientation 0x0112, ExifIFD 0x8769, DateTimeOriginal 0x9003, OffsetTimeOriginal 0x9011,
 * SubSecTimeOriginal 0x9291).
 */
export function exifBlock({ bigEndian = false, ...facts }: ExifFacts): Uint8Array {
  const header = 8
  const main: Field[] = [
    ...text(0x010f, facts.make),
    ...(facts.orientation === undefined ? [] : [short(0x0112, facts.orientation, bigEndian)]),
  ]
  const exif = [
    ...text(0x9003, facts.dateTimeOriginal),
    ...text(0x9011, facts.offsetTimeOriginal),
    ...text(0x9291, facts.subSecTimeOriginal),
  ]
  const mainLength = ifdLength([...main, long(0x8769, 0, bigEndian)])
  const exifAt = header + mainLength
  const fields = exif.length === 0 ? main : [...main, long(0x8769, exifAt, bigEndian)]
  const bytes = new Uint8Array(exif.length === 0 ? header + ifdLength(main) : exifAt + ifdLength(exif))
  const view = new DataView(bytes.buffer)
  bytes.set(bigEndian ? [0x4d, 0x4d] : [0x49, 0x49])
  view.setUint16(2, 42, !bigEndian)
  view.setUint32(4, header, !bigEndian)
  writeIfd(view, header, fields, !bigEndian)
  if (exif.length > 0) writeIfd(view, exifAt, exif, !bigEndian)
  return bytes
}

/** Entries of 12 bytes between their number and the offset of the next IFD, then the values that do not fit in four. */
function writeIfd(view: DataView, at: number, fields: Field[], little: boolean): void {
  const bytes = new Uint8Array(view.buffer)
  view.setUint16(at, fields.length, little)
  let valuesAt = at + 2 + fields.length * 12 + 4
  for (const [index, { tag, type, count, value }] of fields.entries()) {
    const entry = at + 2 + index * 12
    view.setUint16(entry, tag, little)
    view.setUint16(entry + 2, type, little)
    view.setUint32(entry + 4, count, little)
    if (value.length <= 4) {
      bytes.set(value, entry + 8)
    } else {
      view.setUint32(entry + 8, valuesAt, little)
      bytes.set(value, valuesAt)
      valuesAt += even(value.length)
    }
  }
  view.setUint32(at + 2 + fields.length * 12, 0, little)
}

function ifdLength(fields: Field[]): number {
  const values = fields.filter(({ value }) => value.length > 4)
  return 2 + fields.length * 12 + 4 + values.reduce((sum, { value }) => sum + even(value.length), 0)
}

function even(length: number): number {
  return length + (length % 2)
}

function text(tag: number, value: string | undefined): Field[] {
  if (value === undefined) return []
  const bytes = new TextEncoder().encode(`${value}\0`)
  return [{ tag, type: ASCII, count: bytes.length, value: bytes }]
}

function short(tag: number, value: number, bigEndian: boolean): Field {
  const bytes = new Uint8Array(2)
  new DataView(bytes.buffer).setUint16(0, value, !bigEndian)
  return { tag, type: SHORT, count: 1, value: bytes }
}

function long(tag: number, value: number, bigEndian: boolean): Field {
  const bytes = new Uint8Array(4)
  new DataView(bytes.buffer).setUint32(0, value, !bigEndian)
  return { tag, type: LONG, count: 1, value: bytes }
}
