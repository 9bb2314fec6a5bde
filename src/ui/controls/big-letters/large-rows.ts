import type { Large } from '../../page.ts'
import { blank, type Line, large, line, wrap } from '../../text/line.ts'
import { bigLetters, bigLines } from './big-letters.ts'

/** As many lines in large letters as there is room for above those that stay small. */
export function largeRows(
  { letters, under, more = [] }: Large,
  width: number,
  height: number,
): Line[] | null {
  for (let count = more.length; count > 0; count -= 1) {
    const small = smallRows(under.slice(count), width)
    const drawn = bigLines([letters, ...more.slice(0, count)], width - 6, height - small.length - 1)
    if (drawn) return [blank, ...drawn.map(largeRow), ...small]
  }
  const small = smallRows(under, width)
  const room = height - small.length - 1
  const drawn = bigLetters(letters, width - 6, room) ?? bigLines([letters], width - 6, room)
  return drawn && [blank, ...drawn.map(largeRow), ...small]
}

function largeRow(text: string): Line {
  return line('   ', large(text))
}

/** Small rows under the large ones, with an empty one before them. */
function smallRows(under: readonly Line[], width: number): Line[] {
  return under.length === 0 ? [] : [blank, ...under.flatMap((row) => wrap(line('   ', row), width, 5))]
}
