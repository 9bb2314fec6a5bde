import type { Large } from '../../page.ts'
import { blank, type Line, large, line, strong, textOf, widthOf, wrap } from '../../text/line.ts'
import { BROAD_SIZES, bigLetters } from './big-letters.ts'

/**
 * What a page says in large letters, with its words under them; as many of these in large letters too as it says and
 * as there is room for. Words give way before letters do, and what cannot be drawn is written.
 */
export function largeRows({ letters, under, more = 0 }: Large, width: number, height: number): Line[] {
  for (let count = Math.min(more, under.length); count >= 0; count -= 1) {
    // What is looked for first does not get narrow because of what is under it.
    const rows = withWords(letters, under, { count, width, height, sizes: BROAD_SIZES })
    if (rows) return rows
  }
  const rows = withWords(letters, under, { count: 0, width, height })
  const bare = rows ?? bigLetters(letters, width - 2 * SIDE, height)?.map(largeRow)
  return bare ?? [line(strong(letters)), ...under].flatMap((row) => written(row, width))
}

interface Room {
  /** How many of the words are large too. */
  count: number
  width: number
  height: number
  sizes?: typeof BROAD_SIZES
}

function withWords(
  letters: string,
  under: readonly Line[],
  { count, width, height, sizes }: Room,
): Line[] | null {
  const texts = [letters, ...under.slice(0, count).map(textOf)]
  for (const small of smallRows(under.slice(count), width)) {
    const drawn = bigLetters(texts, width - 2 * SIDE, height - small.length - 1, sizes)
    if (drawn) return [blank, ...drawn.map(largeRow), ...small]
  }
  return null
}

const SIDE = 3

function largeRow(text: string): Line {
  return line(' '.repeat(SIDE), large(text))
}

/** Each part on a row of its own under an empty one; or one after the other, at last without the empty one. */
function smallRows(under: readonly Line[], width: number): Line[][] {
  const [first, ...rest] = under
  if (!first) return [[]]
  const apart = under.flatMap((row) => written(row, width))
  const inOne = written(line(first, ...rest.flatMap((row) => [', ', ...row])), width)
  return [[blank, ...apart], [blank, ...inOne], inOne]
}

function written(row: Line, width: number): Line[] {
  const whole = line(' '.repeat(SIDE), row)
  // Wrapped, a sign would lose the space behind its word.
  return widthOf(whole) <= width ? [whole] : wrap(whole, width, SIDE + 2)
}
