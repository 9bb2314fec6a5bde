/** What stands between two line feeds of a file, or between a line feed and a block of zeros. */
export interface Piece {
  /** Of the file's lines, from 1. */
  line: number
  /** Its last line: empty lines that follow each other are one piece. */
  last: number
  /** Where it begins in the file. */
  start: number
  text: Buffer
  hasFeed: boolean
  /** Whether it stands behind the last line feed of the file. */
  isOpenEnd: boolean
  form: 'text' | 'blank' | 'zeros'
}

/** A file cut up. Carriage returns before a feed, and a mark before the first line, are not in the pieces. */
export interface CutUp {
  bytes: Buffer
  pieces: Piece[]
  hasMark: boolean
  /** The lines that ended in CR LF. */
  returns: number[]
}

/**
 * Cuts the bytes of a journal at its line feeds and around blocks of zeros. A single zero byte stays in its piece: it is
 * one bit away from a space.
 */
export function cutUp(bytes: Uint8Array): CutUp {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const hasMark = MARK.equals(buffer.subarray(0, MARK.length))
  const cut: CutUp = { bytes: buffer, pieces: [], hasMark, returns: [] }
  let start = hasMark ? MARK.length : 0
  for (let line = 1; start < buffer.length; line += 1) {
    const feed = buffer.indexOf(LINE_FEED, start)
    const end = feed === -1 ? buffer.length : feed
    const hasReturn = end > start && buffer[end - 1] === RETURN
    if (hasReturn) cut.returns.push(line)
    addLine(cut, { line, start, end: hasReturn ? end - 1 : end, hasFeed: feed !== -1 })
    start = end + 1
  }
  return cut
}

const MARK = Buffer.from([0xef, 0xbb, 0xbf])
const LINE_FEED = 0x0a
const RETURN = 0x0d
const TWO_ZEROS = Buffer.alloc(2)

interface Line {
  line: number
  start: number
  end: number
  hasFeed: boolean
}

function addLine({ bytes, pieces }: CutUp, { line, start, end, hasFeed }: Line): void {
  const add = (form: Piece['form'], from: number, to: number) => {
    if (form === 'text' && from === to && to !== end) return
    const text = bytes.subarray(from, to)
    const isFed = hasFeed && to === end
    const shape = isBlank(text) ? 'blank' : form
    const before = pieces.at(-1)
    if (shape === 'blank' && before?.form === 'blank' && before.last === line - 1) {
      before.last = line
      before.text = bytes.subarray(before.start, to)
      return
    }
    pieces.push({ line, last: line, start: from, text, hasFeed: isFed, isOpenEnd: !hasFeed, form: shape })
  }
  let from = start
  for (;;) {
    const zeros = bytes.subarray(0, end).indexOf(TWO_ZEROS, from)
    if (zeros === -1) break
    add('text', from, zeros)
    from = zeros
    while (from < end && bytes[from] === 0) from += 1
    add('zeros', zeros, from)
  }
  // Behind zeros that reach to the end of the line there is no piece of its own.
  if (from < end || from === start) add('text', from, end)
}

function isBlank(text: Buffer): boolean {
  return text.every((byte) => byte === 0x20 || byte === 0x09)
}
