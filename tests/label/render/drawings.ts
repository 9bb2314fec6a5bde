import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { groupedCode, labelCode } from '../../../src/label/code.ts'
import { type Drawing, moved, type Shape } from '../../../src/label/drawing.ts'
import type { DotTools } from '../../../src/label/render/bitmap.ts'
import { openRasteriser } from '../../../src/label/render/rasteriser.ts'
import { labelSymbol } from '../../../src/label/symbol/label-symbol.ts'
import { typeface } from '../../../src/print/fonts.ts'

/** A small label with its symbol, its code and one line of text. `dots` is how many dots a module has at `dpi`. */
export function smallLabel(
  code: string,
  { text = 'valve cover bolts', dpi = 300, dots = 6 }: { text?: string; dpi?: number; dots?: number } = {},
): Drawing {
  const module = (dots * 25.4) / dpi
  return page(38.1, 21.2, [
    { kind: 'symbol', x: 2.2, y: 3.1, module, modules: labelSymbol(code, 1) },
    { kind: 'text', x: 17, y: 8, size: 3.2, weight: 'strong', text: groupedCode(code) },
    { kind: 'text', x: 17, y: 13, size: 2.4, weight: 'plain', text },
  ])
}

/** Codes of one job, from container 1 on. */
export function codesOf(count: number): string[] {
  return Array.from({ length: count }, (_, index) => labelCode(42, index + 1))
}

/** A4 with 5 x 13 labels. */
export function fullSheet(codes: readonly string[]): Drawing {
  const labels = codes.map((code, index) =>
    moved(smallLabel(code), 4.75 + (index % 5) * 40.6, 10.7 + Math.floor(index / 5) * 21.2),
  )
  return page(
    210,
    297,
    labels.flatMap(({ shapes }) => shapes),
  )
}

export function page(width: number, height: number, shapes: Shape[]): Drawing {
  return { width, height, shapes }
}

export async function dotTools(): Promise<DotTools> {
  const wasm = createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')
  return { typeface: typeface(), rasteriser: await openRasteriser(readFileSync(wasm)) }
}

/** Sides in dots of a picture as lengths, to be compared with lengths to a tenth of a millimetre. */
export function tenths(dots: object, dpi: number): number[] {
  return Object.values(dots).map((side: number) => Math.round((side * 254) / dpi) / 10)
}
