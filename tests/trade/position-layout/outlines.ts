import type { PositionLayout } from '../../../src/trade/position-layout/position-layout.ts'

/** A layout of columns and rows as it would be typed: `1 2 3 / 8 . 4`. */
export function outlineOf({ places }: PositionLayout): string {
  const rows: string[][] = []
  for (const { position, x, y } of places) {
    rows[y] ??= []
    const row = rows[y]
    row[x] = position
  }
  return Array.from(rows, (row) => Array.from(row ?? ['.'], (position) => position ?? '.').join(' ')).join(
    ' / ',
  )
}
