import { type ChosenSymbol, chooseSymbol, type SymbolTooSmall } from '../symbol/choose-symbol.ts'
import type { Box } from './column.ts'

/** A symbol and the places where it stands, each with its quiet zone. */
export interface SymbolSpots {
  symbol: ChosenSymbol
  places: Box[]
}

/**
 * The ways to put symbols on a label, the safest first: in three corners where there is room, in two opposite ones, in the
 * top right one. What spoils one seldom reaches the others, and of damaged labels that counts for most
 * (`../symbol/survival.ts`).
 */
export function symbolSpots(area: Box, dpi: number): SymbolSpots[] | SymbolTooSmall {
  const shorter = Math.min(area.width, area.height)
  const needed = leastSide(dpi)
  const side = Math.max(needed, Math.min(share * shorter, largest))
  const room = { width: Math.min(side, area.width), height: Math.min(side, area.height) }
  const one = chooseSymbol({ ...room, symbols: 1 }, dpi)
  if ('code' in one) return { ...one, room: shorter }
  return arrangements.flatMap(({ symbols, hasRoom, placesOf }) => {
    const symbol = chooseSymbol({ ...room, symbols }, dpi)
    return 'code' in symbol || !hasRoom(area, symbol.size)
      ? []
      : [{ symbol, places: placesOf(area, symbol.size) }]
  })
}

const arrangements = [
  {
    symbols: 3,
    hasRoom: ({ width, height }: Box, side: number) => height >= 2 * side && width - 2 * side >= betweenTwo,
    placesOf: (area: Box, side: number) => [
      topRight(area, side),
      bottomLeft(area, side),
      bottomRight(area, side),
    ],
  },
  {
    symbols: 2,
    hasRoom: hasRoomForTwo,
    placesOf: (area: Box, side: number) => [topRight(area, side), bottomLeft(area, side)],
  },
  { symbols: 1, hasRoom: () => true, placesOf: (area: Box, side: number) => [topRight(area, side)] },
]

/** Side of the smallest symbol that this printer can print legibly, with its quiet zone, in millimetres. */
export function leastSide(dpi: number): number {
  const none = chooseSymbol({ width: 0, height: 0, symbols: 1 }, dpi)
  return 'code' in none ? none.needed : none.size
}

// The tuning: how much of the shorter side a symbol may take, what is large enough for any phone, and how wide the lines
// beside one symbol or between two must be for a heading to stand there.
const share = 0.42
const largest = 36
const besideOne = 26
const betweenTwo = 28

function hasRoomForTwo({ width, height }: Box, side: number): boolean {
  const aboveEachOther = height >= 2 * side && width - side >= besideOne
  return aboveEachOther || width - 2 * side >= betweenTwo
}

function topRight({ x, y, width }: Box, side: number): Box {
  return { x: x + width - side, y, width: side, height: side }
}

function bottomLeft({ x, y, height }: Box, side: number): Box {
  return { x, y: y + height - side, width: side, height: side }
}

function bottomRight({ x, y, width, height }: Box, side: number): Box {
  return { x: x + width - side, y: y + height - side, width: side, height: side }
}
