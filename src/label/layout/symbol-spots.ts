import { type ChosenSymbol, chooseSymbol, type SymbolTooSmall } from '../symbol/choose-symbol.ts'
import type { Box } from './column.ts'

/** A symbol and the places where it stands, each with its quiet zone. */
export interface SymbolSpots {
  symbol: ChosenSymbol
  places: Box[]
}

/**
 * The ways to put symbols on a label, the safest first: two in opposite corners where there is room, for what spoils one
 * seldom reaches the other; then one in the top right corner.
 */
export function symbolSpots(area: Box, dpi: number): SymbolSpots[] | SymbolTooSmall {
  const shorter = Math.min(area.width, area.height)
  const needed = leastSide(dpi)
  const side = Math.max(needed, Math.min(share * shorter, largest))
  const one = chooseSymbol(
    { width: Math.min(side, area.width), height: Math.min(side, area.height), symbols: 1 },
    dpi,
  )
  if ('code' in one) return { ...one, room: shorter }
  const two = chooseSymbol({ width: side, height: side, symbols: 2 }, dpi)
  const spots = [{ symbol: one, places: [topRight(area, one.size)] }]
  if ('code' in two || !hasRoomForTwo(area, two.size)) return spots
  return [{ symbol: two, places: [topRight(area, two.size), bottomLeft(area, two.size)] }, ...spots]
}

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
