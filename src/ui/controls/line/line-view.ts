import { headOf, type Line, line, plain, strong, widthOf } from '../../text/line.ts'

/** The line as it is drawn, and the column in which the cursor stands. */
export interface LineView {
  row: Line
  cursor: number
}

const PROMPT = ' > '

/** The line in a width: what the cursor stands in is always in sight. */
export function lineView(before: string, after: string, width: number): LineView {
  const room = width - PROMPT.length - 1
  // As it will be drawn: signs that are not seen take no column.
  const shown = tailOf(plain(before).text, room)
  const rest = headOf(plain(after).text, Math.max(0, room - widthOf(shown)))
  return {
    row: line(strong(PROMPT), strong(shown), rest),
    cursor: PROMPT.length + widthOf(shown),
  }
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** The end of a text that fits; two dots stand for what is cut off before it. */
function tailOf(text: string, width: number): string {
  // Of a long text no more is looked at than may be in sight.
  const end = text.slice(-16 * width)
  if (end.length === text.length && widthOf(text) <= width) return text
  let tail = ''
  for (const { segment } of [...graphemes.segment(end)].reverse()) {
    if (widthOf(segment + tail) > width - 2) break
    tail = segment + tail
  }
  return `..${tail}`
}
