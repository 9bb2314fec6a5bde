import type { Weight } from './drawing.ts'

/** What the layout and the drawing need to know of the fonts. Sizes and widths in millimetres. */
export interface Typeface {
  /** How wide a text is, set at that em. */
  widthOf(text: string, size: number, weight: Weight): number
  /** The outline as SVG path data, in millimetres, y down, the start of the baseline at 0, 0. */
  outlineOf(text: string, size: number, weight: Weight): string
  /** The characters that the fonts cannot draw, each once; empty when all is well. */
  missing(text: string): string[]
  /** The font files themselves, for a PDF to embed. */
  readonly files: Readonly<Record<Weight, Uint8Array>>
}
