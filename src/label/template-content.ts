/** What a template says, in words: a sheet with a place for each piece of a set, as they lie on the machine. */
export interface TemplateContent {
  kind: 'template'
  /** Names the sheet in errors: `template for cam caps I1–I4, E1–E4`. */
  name: string
  /** `cam caps I1–I4, E1–E4`. */
  title: string
  /** Where they belong: `camshafts`. */
  home: string
  /** What is marked on the pieces, where it is one mark for the sheet: `arrow towards the chain`. */
  mark: string | null
  /** Stands at the edge to which the arrows point, where there are any. */
  edge: string
  /** What to do with the sheet. */
  how: string
  /** Whether it is full size. */
  scale: string
  /** Stands at the line by which the print is checked, `CHECK_LINE_MM` long. */
  check: string
  job: string
  places: TemplatePlace[]
  /** The one container that the set lies in. */
  container: { name: string; code: string } | null
}

export interface TemplatePlace {
  position: string
  /** Size, or a mark of its own. */
  caption: string | null
  /** Its size is not that of most others: the one long bolt. */
  stands: boolean
  /** Diameter of the thread in millimetres where it goes through the sheet; null for a piece that is laid on it. */
  diameterMm: number | null
}

/** Length of the line on the sheet that is measured after printing. */
export const CHECK_LINE_MM = 100
