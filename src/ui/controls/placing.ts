import type { PlacedPosition, PositionLayout } from '../../trade/position-layout/position-layout.ts'
import { MOST_ACROSS } from '../../trade/position-layout/position-layout.ts'

/** Positions that are being placed one after the other, and where the next one would stand. */
export interface Placing {
  cursor: { x: number; y: number }
  placed: PlacedPosition[]
}

export type Direction = 'up' | 'right' | 'down' | 'left'

/** Nothing placed yet. */
export const PLACING_BEGINS: Placing = { cursor: { x: 0, y: 0 }, placed: [] }

/** The cursor one place further. Beyond the first column or row, everything moves to make room there. */
export function moved({ cursor, placed }: Placing, direction: Direction): Placing {
  const { x: right, y: down } = STEPS[direction]
  const x = cursor.x + right
  const y = cursor.y + down
  if (x >= MOST_ACROSS || y >= MOST_ACROSS) return { cursor, placed }
  const shift = { x: Math.max(0, -x), y: Math.max(0, -y) }
  if (placed.some((at) => at.x + shift.x >= MOST_ACROSS || at.y + shift.y >= MOST_ACROSS))
    return { cursor, placed }
  const isIdle = placed.length === 0
  return {
    cursor: { x: x + shift.x, y: y + shift.y },
    placed: isIdle ? placed : placed.map((at) => ({ ...at, x: at.x + shift.x, y: at.y + shift.y })),
  }
}

const STEPS = {
  up: { x: 0, y: -1 },
  right: { x: 1, y: 0 },
  down: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
}

/** The position that stands under the cursor. */
export function underCursor({ cursor, placed }: Placing): string | null {
  return placed.find(({ x, y }) => x === cursor.x && y === cursor.y)?.position ?? null
}

/** A position placed under the cursor, which goes on to the right as far as there is room. */
export function placedHere(placing: Placing, position: string): Placing {
  const { cursor, placed } = placing
  return moved({ cursor, placed: [...placed, { position, ...cursor }] }, 'right')
}

/** The last position taken back: the cursor stands where it was. */
export function tookBack({ cursor, placed }: Placing): Placing {
  const last = placed.at(-1)
  return last ? { cursor: { x: last.x, y: last.y }, placed: placed.slice(0, -1) } : { cursor, placed }
}

/** All that is placed, as a layout from its own corner. */
export function layoutPlaced({ placed }: Placing): PositionLayout {
  const left = Math.min(...placed.map(({ x }) => x))
  const top = Math.min(...placed.map(({ y }) => y))
  const places = placed.map(({ position, x, y }) => ({ position, x: x - left, y: y - top }))
  const across = Math.max(...places.map(({ x }) => x)) + 1
  const down = Math.max(...places.map(({ y }) => y)) + 1
  const shape = down === 1 ? 'row' : across * down === places.length ? 'grid' : 'free'
  return { shape, places }
}
