import qrcode from 'qrcode'
import { quietZone } from '../../../src/label/symbol/label-symbol.ts'
import { dotsPerMillimetre, type PrintedLabel } from './label-image.ts'
import { type PlacementName, placements } from './placements.ts'

/** A label of 64 by 34 mm at 203 dpi. */
export const labelSize = { width: 64 * dotsPerMillimetre, height: 34 * dotsPerMillimetre }

/** What stays free all round, in dots: half a millimetre. */
const inset = 4
const area = { width: labelSize.width - 2 * inset, height: labelSize.height - 2 * inset }

/** How the symbols of a label are printed. */
export interface Print {
  version: number
  level: 'L' | 'M' | 'Q' | 'H'
  /** Side of a module in dots. */
  dots: number
  placement: PlacementName
}

/** Whether symbols so large stand on a label of 64 by 34 mm without touching. */
export function fitsLabel({ version, dots, placement }: Print): boolean {
  const side = sideOf(version, dots)
  const places = placements[placement](area, side)
  return places.every(({ left, top }, at) => {
    const inside = left >= 0 && top >= 0 && left + side <= area.width && top + side <= area.height
    const apart = places
      .slice(0, at)
      .every((other) => Math.abs(other.left - left) >= side || Math.abs(other.top - top) >= side)
    return inside && apart
  })
}

/** The label with that code in each of its symbols. */
export function printedLabel(code: string, { version, level, dots, placement }: Print): PrintedLabel {
  const { modules } = qrcode.create([{ data: code, mode: 'numeric' }], {
    version,
    errorCorrectionLevel: level,
  })
  const line = Array.from({ length: modules.size }, (_, at) => at)
  const rows = line.map((row) => line.map((column) => modules.get(row, column) === 1))
  const symbols = placements[placement](area, sideOf(version, dots)).map(({ left, top }) => ({
    left: inset + left + quietZone * dots,
    top: inset + top + quietZone * dots,
    module: dots,
    modules: rows,
  }))
  return { ...labelSize, symbols }
}

/** Side of a symbol with its quiet zone, in dots. */
export function sideOf(version: number, dots: number): number {
  return (17 + 4 * version + 2 * quietZone) * dots
}
