import type { Large } from '../../page.ts'
import { blank, type Line, large, line, strong, textOf, wrap } from '../../text/line.ts'
import { BROAD_SIZES, bigLetters } from './big-letters.ts'

/**
 * What a page says in large letters, with its words under them; as many of these in large letters too as it says and
 * as there is room for. Words give way before letters do, and what cannot be drawn is written.
 */
export function largeRows(said: Large, width: number, height: number): Line[] {
  const { letters, under, more = 0 } = said
  for (let count = Math.min(more, under.length); count >= 0; count -= 1) {
    const texts = [letters, ...under.slice(0, count).map(textOf)]
    for (const small of smallRows(under.slice(count), width)) {
      const room = height - small.length - 1
      // What is looked for first does not get narrow because of what is under it.
      const drawn = bigLetters(texts, width - 2 * SIDE, room, count > 0 ? BROAD_SIZES : undefined)
      if (drawn) return [blank, ...drawn.map(largeRow), ...small]
    }
  }
  const drawn = bigLetters(letters, width - 2 * SIDE, height)
  if (drawn) return drawn.map(largeRow)
  return [line(strong(letters)), ...under].flatMap((row) => written(row, width))
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
  return wrap(line(' '.repeat(SIDE), row), width, SIDE + 2)
}
