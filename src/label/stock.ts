/** A label stock by its measures alone, in millimetres. A whole sheet of paper is a stock of one label. */
export interface Stock {
  /** What a user calls it, and the name of its file: `a4-24`. */
  name: string
  /** One line on what it is: `24 labels of 64 x 33.9 mm on A4`. */
  says: string
  /** A sheet to be put into a printer, or one label of a roll. */
  page: { width: number; height: number }
  columns: number
  rows: number
  label: { width: number; height: number }
  /** From the edges of the page to the first label. */
  margin: { left: number; top: number }
  /** Between labels. */
  gap: { x: number; y: number }
  /** Radius of the corners of a label. */
  corner: number
  /** What the printer that it is for can print, dots to the inch. */
  dpi: number
  /** Sheets go to a page printer, rolls to a label printer; a receipt roll is cut where the label ends. */
  kind: 'sheet' | 'roll' | 'receipt'
}
