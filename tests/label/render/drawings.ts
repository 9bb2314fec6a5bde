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

const box = { kind: 'box', x: 10, y: 5, width: 30, height: 20, line: 1 } as const

/** One shape of each kind with the left, top, right and bottom of its ink, in millimetres. */
export const SHAPES_AND_SIDES: readonly (readonly [Shape, readonly number[]])[] = [
  [box, [9.5, 4.5, 40.5, 25.5]],
  [{ ...box, filled: true, corner: 3 }, [10, 5, 40, 25]],
  [{ kind: 'circle', x: 20, y: 20, radius: 8, line: 0.4 }, [11.8, 11.8, 28.2, 28.2]],
  [{ kind: 'line', from: { x: 5, y: 30 }, to: { x: 55, y: 30 }, width: 0.6 }, [5, 29.7, 55, 30.3]],
  [
    {
      kind: 'polygon',
      points: [
        { x: 3, y: 4 },
        { x: 9, y: 4 },
        { x: 6, y: 10 },
      ],
    },
    [3, 4, 9, 10],
  ],
]
