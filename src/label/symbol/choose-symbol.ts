import { modulesOf, quietZone, type SymbolVersion } from './label-symbol.ts'
import { type Survival, survival } from './survival.ts'

/** Where a label has room for its symbols, in millimetres: each may take so much with its quiet zone. */
export interface SymbolRoom {
  width: number
  height: number
  /** How many such places there are. */
  symbols: number
}

/** A symbol that fits its room. */
export interface ChosenSymbol {
  version: SymbolVersion
  /** Side of a module in millimetres, a whole number of dots. */
  module: number
  dots: number
  /** Side of the whole in millimetres, with the quiet zone of four modules on each side. */
  size: number
}

/** No symbol of this room could be printed at this resolution and read again. */
export interface SymbolTooSmall {
  code: 'symbol-too-small'
  /** Side of the room in millimetres. */
  room: number
  /** Side that the smallest symbol takes, in millimetres. */
  needed: number
  /** The smallest module that may be printed, in millimetres and dots. */
  module: number
  dots: number
  dpi: number
}

/**
 * Fills the room with a symbol of the version that was read most often among damaged labels (`survival.ts`). A version
 * with smaller modules, which is read from less far away, is taken only for a gain that is more than chance.
 * @param dpi dots to the inch of the printer
 */
export function chooseSymbol(room: SymbolRoom, dpi: number): ChosenSymbol | SymbolTooSmall {
  const side = Math.min(room.width, room.height)
  const dot = 25.4 / dpi
  const least = leastDots(dot)
  const fitting = versions.flatMap((version) => {
    const across = modulesOf(version) + 2 * quietZone
    const dots = Math.floor(side / (across * dot) + rounding)
    if (dots < least) return []
    return [{ version, dots, module: dots * dot, size: across * dots * dot }]
  })
  const [first, ...others] = fitting
  if (first === undefined) {
    const needed = (modulesOf(1) + 2 * quietZone) * least * dot
    return { code: 'symbol-too-small', room: side, needed, module: least * dot, dots: least, dpi }
  }
  return others.reduce((best, each) => (isBetter(each, best, room.symbols) ? each : best), first)
}

const versions: readonly SymbolVersion[] = [1, 2, 3, 4]
// At least four dots a module, as the originator of the QR code advises; and 0.4 mm, common practice for a phone
// held at 30 cm.
const fewestDots = 4
const phoneModule = 0.4
// Lengths that are a whole number of dots may come out a hair too short.
const rounding = 1e-6

// In a thousand: each row of the table is a count among 200 pictures, the same ones for all.
const chance = 20

function leastDots(dot: number): number {
  return Math.max(fewestDots, Math.ceil(phoneModule / dot - rounding))
}

function isBetter(each: ChosenSymbol, best: ChosenSymbol, symbols: number): boolean {
  const gain = readings(each, symbols) - readings(best, symbols)
  return gain > (each.dots < best.dots ? chance : 0)
}

/**
 * Readings in a thousand, between the measured module sizes in proportion and beyond them as at the last; none where
 * the version was not measured, so that it is never chosen.
 */
function readings({ version, module }: ChosenSymbol, symbols: number): number {
  const counts = survival.map((each) => each.symbols)
  const measured = Math.min(Math.max(symbols, Math.min(...counts)), Math.max(...counts))
  const points = survival
    .filter((each) => each.version === version && each.symbols === measured)
    .sort((a, b) => a.module - b.module)
  const above = points.findIndex((point) => point.module >= module)
  if (above === -1) return points.at(-1)?.readings ?? 0
  const [from, to] = [points[above - 1], points[above]] as [Survival | undefined, Survival]
  if (from === undefined) return to.readings
  const share = (module - from.module) / (to.module - from.module)
  return from.readings + share * (to.readings - from.readings)
}
