import stringWidth from 'string-width'

/** How a piece of text stands out. Never the only bearer of a meaning: a word or a sign always says it too. */
export type Tone =
  | 'plain'
  | 'strong'
  | 'large'
  | 'drawn'
  | 'here'
  | 'good'
  | 'wait'
  | 'active'
  | 'stop'
  | 'raw'

export interface Span {
  text: string
  tone: Tone
}

/** One row of the screen, in spans. */
export type Line = readonly Span[]

type Part = string | Span | Line

/** A line of its parts; bare strings are plain. */
export function line(...parts: Part[]): Line {
  return parts
    .flatMap((part) => (typeof part === 'string' ? [plain(part)] : part))
    .map((span) => {
      const text = quiet(span.text)
      return text === span.text ? span : { ...span, text }
    })
    .filter(({ text }) => text !== '')
}

export function plain(text: string): Span {
  return { text: quiet(text), tone: 'plain' }
}

export function strong(text: string): Span {
  return { text: quiet(text), tone: 'strong' }
}

// Names may come from a file that others wrote: nothing in them may steer the terminal or turn its text around.
function quiet(text: string): string {
  return PLAIN.test(text) ? text : text.replace(UNSEEN, '')
}

/** What steers or hides. Of what hides, and of half a character, no two terminals agree how many columns it takes. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Default_Ignorable_Code_Point}\u2028\u2029]/gu

/** Signs of one column each, none of which steers: most texts are nothing else, and of long lists every row is made. */
const PLAIN = /^[\x20-\x7e\xa1-\xac\xae-\xff\u2500-\u257f\u2588\u2713]*$/

/** A row of large letters: seen from afar, and nothing to be read aloud. */
export function large(text: string): Span {
  return { text, tone: 'large' }
}

/** A part of a drawing made of characters: nothing to be read aloud. */
export function drawn(text: string): Span {
  return { text: quiet(text), tone: 'drawn' }
}

/** A row of nothing. */
export const blank: Line = []

/** The text of a line alone. */
export function textOf(parts: Line): string {
  return parts.map(({ text }) => text).join('')
}

/** Columns that a line takes. */
export function widthOf(parts: Line | string): number {
  return columnsOf(typeof parts === 'string' ? parts : textOf(parts))
}

/** The line in at most `width` columns; what does not fit is replaced by two dots. */
export function cut(parts: Line, width: number): Line {
  if (isWithin(textOf(parts), width)) return parts
  if (width < 2) return []
  const kept: Span[] = []
  let left = width - 2
  for (const { text, tone } of parts) {
    const head = headOf(text, left)
    if (head !== '') kept.push({ text: head, tone })
    left -= columnsOf(head)
    if (head.length < text.length) break
  }
  return [...kept, plain('..')]
}

/** The same without label codes in brackets where it has no room for them: what they are on says enough. */
export function brief(parts: Line, width: number): Line {
  if (isWithin(textOf(parts), width)) return parts
  return cut(
    parts.map(({ text, tone }) => ({ text: text.replace(/ \(\d{3} \d{4} \d{2}\)/g, ''), tone })),
    width,
  )
}

/** The line filled up with spaces to `width` columns, or cut to it. */
export function padded(parts: Line, width: number): Line {
  const short = cut(parts, width)
  const free = width - widthOf(short)
  return free > 0 ? [...short, plain(' '.repeat(free))] : short
}

/** Two lines on one row, the second at the right edge. The first gives way when both do not fit. */
export function spread(left: Line, right: Line, width: number): Line {
  const end = cut(right, width)
  const room = width - widthOf(end)
  return room < 3 ? padded(left, width) : [...padded(left, room - 1), plain(' '), ...end]
}

/** The line on as many rows as it takes, broken at spaces; rows after the first begin with `hang` spaces. */
export function wrap(parts: Line, width: number, hang = 0): Line[] {
  if (isWithin(textOf(parts).trimEnd(), width)) return [joined(parts)]
  const rows: Span[][] = [[]]
  let used = 0
  const hung = (): Span[] => (hang > 0 ? [plain(' '.repeat(hang))] : [])
  for (const word of wordsOf(parts)) {
    const isBroken = used > (rows.length > 1 ? hang : 0) && !isWithin(textOf(word).trimEnd(), width - used)
    if (isBroken) {
      rows.push(hung())
      used = hang
    }
    for (const [index, { text, tone }] of word.entries()) {
      let rest = isBroken && index === 0 ? text.trimStart() : text
      // A word longer than a row is broken where the row ends.
      while (!isWithin(rest.trimEnd(), width - used)) {
        const head = headOf(rest, width - used)
        // Not even one character has room on any row.
        if (head === '' && used <= hang) break
        if (head !== '') rows.at(-1)?.push({ text: head, tone })
        rest = rest.slice(head.length)
        rows.push(hung())
        used = hang
      }
      rows.at(-1)?.push({ text: rest, tone })
      used += columnsOf(rest)
    }
  }
  return rows.map(joined)
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** As much of the text's beginning as fits, whole characters only. */
export function headOf(text: string, width: number): string {
  if (isWithin(text, width)) return text
  // One sign more than there is room for: it may change the one before it.
  if (PLAIN.test(text.slice(0, Math.max(0, width) + 1))) return text.slice(0, Math.max(0, width))
  let head = ''
  let used = 0
  for (const { segment } of graphemes.segment(text.slice(0, mostUnits(width)))) {
    used += stringWidth(segment)
    if (used > width) break
    head += segment
  }
  return head
}

/** Whether a text takes no more columns. Of a long one nobody counts all of them, for that takes its time. */
function isWithin(text: string, width: number): boolean {
  return text.length <= mostUnits(width) && columnsOf(text) <= width
}

function columnsOf(text: string): number {
  return PLAIN.test(text) ? text.length : stringWidth(text)
}

/** No text that can be read has more code units in so many columns, signs made of many among it. */
function mostUnits(width: number): number {
  return 16 * Math.max(width, 2)
}

/** A label code is one word, a count stays beside what it counts, and a step beside its number. */
const WORD = /\s*(?:\(?\d{3} \d{4} \d{2}(?!\d)\S*|\d+ × \S+|step \d+\S*|\S+)\s*|\s+/gu

/** Words with the spaces after them, so that a break can come before any of them. */
function wordsOf(parts: Line): Span[][] {
  const words: Span[][] = []
  for (const { text, tone } of parts) {
    for (const word of text.match(WORD) ?? []) {
      const last = words.at(-1)
      // A full stop behind a word that stands out is no word of its own.
      const goesOn = last !== undefined && !/\s$/u.test(last.at(-1)?.text ?? ' ') && !/^\s/u.test(word)
      if (goesOn) last.push({ text: word, tone })
      else words.push([{ text: word, tone }])
    }
  }
  return words
}

function joined(spans: readonly Span[]): Line {
  const row: Span[] = []
  for (const span of spans) {
    const last = row.at(-1)
    if (last?.tone === span.tone) row[row.length - 1] = { text: last.text + span.text, tone: span.tone }
    else if (span.text !== '') row.push(span)
  }
  const last = row.at(-1)
  if (last) row[row.length - 1] = { ...last, text: last.text.trimEnd() }
  return row.filter(({ text }) => text !== '')
}
