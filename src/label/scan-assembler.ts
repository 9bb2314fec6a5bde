import { readCode, splitTail } from './code.ts'
import { escapeFilter } from './escape-filter.ts'

/**
 * What the input came to: a terminated line (empty when only the terminator came), or pasted text with line
 * breaks, to be shown before it is taken. In a paste, `lines` are its lines without their breaks and `text` is
 * the same joined by "\n".
 */
export type Piece = { kind: 'line'; text: string } | { kind: 'paste'; text: string; lines: string[] }

export type ScanAssembler = {
  /** Takes the next chunk of input and gives back what it completed, in order. */
  push(chunk: string): Piece[]
  /** Takes a whole paste from who knows where it began and ended: nothing in it is taken for its end. */
  paste(text: string): Piece[]
  /** The text typed or scanned since the last line. */
  pending(): string
  /** Puts another text in its place, as when a line is edited or recalled. */
  set(text: string): void
  /** Drops the pending text and any paste or escape sequence half read. An LF on its way after a CR stays part of it. */
  reset(): void
}

/**
 * In UTF-16 units. Nobody means a longer line, none is taken, and each key would wait for all of it to be drawn. As much is
 * kept as shows that it is too long.
 */
const MOST_PASTED = 20_000

/**
 * Turns raw terminal input into lines. Keyboard and scanner share one line, and only content decides, never
 * timing: the same characters give the same pieces however they were cut into chunks.
 *
 * - CR, LF and CRLF end a line; TAB only where the line ends in a whole valid code, elsewhere it is a space.
 * - DEL and BS erase one character as people see it. Other controls and escape sequences are dropped.
 * - A bracketed paste, with or without its ESCs, counts as typed when it has no line break or when its lines are
 *   all valid codes (a scanner behind such a terminal). Any other paste is one piece and leaves the pending text.
 * - Of a paste without a line break no more is kept than many lines are long.
 */
export function scanAssembler(): ScanAssembler {
  let line = ''
  let paste: string | null = null
  let pasteTail = ''
  let afterReturn = false
  let keepText = escapeFilter()

  function push(chunk: string): Piece[] {
    const pieces: Piece[] = []
    for (const character of chunk) {
      for (const kept of keepText(character)) pieces.push(...take(kept))
    }
    return pieces
  }

  function take(character: string): Piece[] {
    if (paste !== null) return collect(character)
    const pieces = type(character)
    if (character === '~' && line.endsWith(pasteStart)) {
      line = line.slice(0, -pasteStart.length)
      paste = ''
      pasteTail = ''
    }
    if (character === '~' && line.endsWith(pasteEnd)) line = line.slice(0, -pasteEnd.length)
    return pieces
  }

  function type(character: string): Piece[] {
    if (isControl(character)) return press(character)
    afterReturn = false
    line += character
    return []
  }

  function press(control: string): Piece[] {
    const secondOfCrLf = afterReturn && control === '\n'
    if ('\b\x7f\t\r\n'.includes(control)) afterReturn = control === '\r'
    switch (control) {
      case '\r':
      case '\n':
        return secondOfCrLf ? [] : [endLine()]
      case '\t':
        if (splitTail(line) !== null) return [endLine()]
        line += ' '
        return []
      case '\b':
      case '\x7f':
        line = withoutLast(line)
        return []
      default:
        return []
    }
  }

  function endLine(): Piece {
    const text = line
    line = ''
    return { kind: 'line', text }
  }

  function collect(character: string): Piece[] {
    if (paste === null || (isControl(character) && !'\t\r\n'.includes(character))) return []
    paste += character
    // Only where a mark may end: of a long paste nobody looks at all of it for each character.
    pasteTail = (pasteTail + character).slice(-pasteEnd.length)
    if (pasteTail === pasteStart) paste = paste.slice(0, -pasteStart.length)
    if (pasteTail !== pasteEnd) return []
    const text = paste.slice(0, -pasteEnd.length)
    paste = null
    return pasted(text)
  }

  function wholePaste(text: string): Piece[] {
    const kept = [...text].map(escapeFilter()).join('')
    return pasted(
      kept
        .replaceAll(pasteStart, '')
        .replaceAll(pasteEnd, '')
        .replace(/[^\P{Cc}\t\r\n]/gu, ''),
    )
  }

  function pasted(text: string): Piece[] {
    const lines = text.split(/\r\n|\r|\n/)
    if (lines.length === 1) return [...text.slice(0, MOST_PASTED)].flatMap(type)
    const filled = lines.filter((each) => each.trim() !== '')
    // Blank lines are not typed: in a paste they must not count as Enter on an empty line.
    if (filled.every((each) => readCode(each).kind === 'code')) {
      return filled.flatMap((each) => [...each, '\r'].flatMap(type))
    }
    if (lines.at(-1) === '') lines.pop()
    return [{ kind: 'paste', text: lines.join('\n'), lines }]
  }

  return {
    push,
    paste: wholePaste,
    pending: () => line,
    set(text) {
      line = text
    },
    reset() {
      line = ''
      paste = null
      keepText = escapeFilter()
    },
  }
}

const pasteStart = '[200~'
const pasteEnd = '[201~'
const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' })

function withoutLast(text: string): string {
  // Of a long line not all of it is looked at: no character that can be read has so many code units.
  const last = [...graphemes.segment(text.slice(-256))].at(-1)
  return text.slice(0, text.length - (last?.segment.length ?? 0))
}

function isControl(character: string): boolean {
  return /\p{Cc}/u.test(character)
}
