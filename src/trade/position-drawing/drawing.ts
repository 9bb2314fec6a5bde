import type { DrawnRow } from './drawn-cell.ts'

/** Positions as rows of text. */
export interface LayoutDrawing {
  rows: DrawnRow[]
  /**
   * `whole`: each where it lies, as seen. `wrapped`: so many columns at a time, two dots where it goes on. `listed`: no
   * more than the order in which they are known.
   */
  form: 'whole' | 'wrapped' | 'listed'
}

/** Columns and rows of characters that a drawing may take. */
export interface Room {
  width: number
  height: number
}
