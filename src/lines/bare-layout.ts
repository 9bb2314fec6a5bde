import { MOST_POSITIONS, type PositionLayout } from '../trade/position-layout/position-layout.ts'
import { readLayout } from '../trade/position-layout/read-layout.ts'

/**
 * A layout of places that are only counted or named by themselves: `2x5`, `circle 12`, `row of 6`, `1 2 3 / 8 . 4`.
 * Undefined for words that are no form of one; null for one that cannot be, as a circle of 500.
 */
export function bareLayout(words: string): PositionLayout | null | undefined {
  const [, rows, columns] = /^(?:an? )?(?:grid )?(\d{1,4}) ?[x×*] ?(\d{1,4})$/i.exec(words) ?? []
  if (rows !== undefined) return layoutOf(`${rows}x${columns}`, Number(rows) * Number(columns))
  const [, shape, count] = /^(?:an? )?(circle|row)(?: of)? (\d{1,4})(?: .{0,20}s)?$/i.exec(words) ?? []
  if (shape !== undefined) return layoutOf(shape, Number(count))
  if (!words.includes('/')) return undefined
  const names = words.split(/[\s/]+/).filter((mark) => mark !== '' && mark !== '.')
  return understood(words, names)
}

function layoutOf(form: string, count: number): PositionLayout | null {
  if (count < 1 || count > MOST_POSITIONS) return null
  return understood(
    form,
    Array.from({ length: count }, (_, index) => String(index + 1)),
  )
}

function understood(form: string, names: readonly string[]): PositionLayout | null {
  const read = readLayout(form, names)
  return read.understood && names.length > 0 ? read.value : null
}
