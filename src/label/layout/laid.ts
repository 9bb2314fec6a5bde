import type { Drawing, Shape } from '../drawing.ts'
import type { SymbolTooSmall } from '../symbol/choose-symbol.ts'
import type { Typeface } from '../typeface.ts'

export interface LabelSize {
  width: number
  height: number
}

export interface About {
  typeface: Typeface
  /** Dots to the inch of the printer: the modules of a symbol are whole dots. */
  dpi: number
  /** Outer diameter of the hose or cable that a flag is folded round, in millimetres; 10 when not said. */
  hose?: number | undefined
}

/** A label as it is drawn, with the names of what had to be shortened; or why there is none. */
export type Laid = { ok: true; drawing: Drawing; shortened: Part[] } | { ok: false; refusal: LayoutRefusal }

export type LayoutRefusal = { label: string } & (
  | { code: 'no-glyph'; characters: string[] }
  | SymbolTooSmall
  /** Code, heading or a first line would not be legible. Size of the label in millimetres. */
  | { code: 'label-too-small'; width: number; height: number }
  /** Wrapped round the hose, too little is left for its two faces; `needed` is the width of label that would do. */
  | { code: 'flag-too-short'; width: number; needed: number; hose: number }
)

/** The name of a part of the label, for the list of what was shortened. */
export type Part = 'heading' | 'what' | 'where' | 'warnings' | 'reasons' | 'machine' | 'job' | 'others'

/** What goes onto a label, and which of its parts had to be shortened. */
export interface Sketch {
  shapes: Shape[]
  shortened: Part[]
}
