import { groupedCode } from '../../code.ts'
import type { Shape } from '../../drawing.ts'
import { chooseSymbol } from '../../symbol/choose-symbol.ts'
import { labelSymbol, quietZone } from '../../symbol/label-symbol.ts'
import { leastSide } from '../symbol-spots.ts'
import { ems, type Sheet } from './row.ts'

/** The smallest legible symbol of a code at the right edge, its quiet zone inside, and the code in digits beneath. */
export function smallSymbol(
  { typeface, dpi, right }: Sheet,
  code: string,
  top: number,
): { shapes: Shape[]; left: number; bottom: number } {
  const side = leastSide(dpi)
  const symbol = chooseSymbol({ width: side, height: side, symbols: 1 }, dpi)
  // The smallest there is fits by definition.
  if ('code' in symbol) throw new RangeError(`No symbol of ${side} mm at ${dpi} dpi`)
  const text = groupedCode(code)
  const width = typeface.widthOf(text, ems.small, 'strong')
  const left = right - Math.max(symbol.size, width)
  const quiet = quietZone * symbol.module
  return {
    left,
    bottom: top + symbol.size + ems.small * 1.2,
    shapes: [
      {
        kind: 'symbol',
        x: right - symbol.size + quiet,
        y: top + quiet,
        module: symbol.module,
        modules: labelSymbol(code, symbol.version),
      },
      {
        kind: 'text',
        x: right - width,
        y: top + symbol.size + ems.small * 0.75,
        size: ems.small,
        weight: 'strong',
        text,
      },
    ],
  }
}
