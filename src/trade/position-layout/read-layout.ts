import {
  inRows,
  type LayoutShape,
  MOST_ACROSS,
  MOST_POSITIONS,
  onCircle,
  type PlacedPosition,
  type PositionLayout,
} from './position-layout.ts'

export type LayoutReading =
  | { understood: true; value: PositionLayout }
  | { understood: false; fault: LayoutFault }

export type LayoutFault =
  /** No form of a layout. `nearest` is one that would be understood for these positions. */
  | { code: 'layout-form'; typed: string; nearest: string }
  /** An outline must name every position once. */
  | { code: 'layout-positions'; missing: string[]; twice: string[]; unknown: string[] }
  /** A grid with fewer places than positions. */
  | { code: 'layout-too-small'; rows: number; columns: number; places: number; positions: number }
  | { code: 'layout-too-wide'; rows: number; columns: number; most: number }
  | { code: 'layout-too-many'; positions: number; most: number }

/**
 * Reads how positions lie on the machine, as a mechanic writes it: `row`; `2x4` or `grid 2x4`, two rows of four,
 * filled row by row in the order given; `circle`, clockwise from the top as seen; or the outline itself, rows
 * separated by `/` and an empty place as `.`: `1 2 3 / 8 . 4 / 7 6 5`. At most 40 rows, 40 columns and 200 positions.
 */
export function readLayout(text: string, positions: readonly string[]): LayoutReading {
  const typed = text.trim()
  if (positions.length > MOST_POSITIONS) {
    return faulty({ code: 'layout-too-many', positions: positions.length, most: MOST_POSITIONS })
  }
  if (/^(a )?row$/i.test(typed)) return row(positions)
  if (/^(a )?circle$/i.test(typed)) return { understood: true, value: onCircle(positions) }
  const grid = /^(?:(?:a )?grid )?(\d{1,6}) ?[x×*] ?(\d{1,6})$/i.exec(typed)
  if (grid) return inGrid(Number(grid[1]), Number(grid[2]), positions)
  const marks = typed.split(/[/\n]/).map((line) => line.split(/\s+/).filter((mark) => mark !== ''))
  return isOutline(marks, positions) ? outline(marks, positions) : unformed(typed, positions)
}

function row(positions: readonly string[]): LayoutReading {
  if (positions.length > MOST_ACROSS) return tooWide(1, positions.length)
  return { understood: true, value: inRows(positions, MOST_ACROSS) }
}

function inGrid(rows: number, columns: number, positions: readonly string[]): LayoutReading {
  if (rows > MOST_ACROSS || columns > MOST_ACROSS) return tooWide(rows, columns)
  const places = rows * columns
  if (places < positions.length) {
    return faulty({ code: 'layout-too-small', rows, columns, places, positions: positions.length })
  }
  return { understood: true, value: inRows(positions, columns) }
}

/** An outline has rows, gaps, or at least one position in it: a word alone is more likely a slip for another form. */
function isOutline(marks: readonly string[][], positions: readonly string[]): boolean {
  const all = marks.flat()
  return all.length > 1 || all.some((mark) => positions.some((position) => isSame(position, mark)))
}

function outline(marks: readonly string[][], positions: readonly string[]): LayoutReading {
  const columns = Math.max(...marks.map((line) => line.length))
  if (marks.length > MOST_ACROSS || columns > MOST_ACROSS) return tooWide(marks.length, columns)
  const read = marks.flatMap((line, y) =>
    line.flatMap((mark, x) => (mark === '.' ? [] : [{ mark, position: named(mark, positions), x, y }])),
  )
  const places = read.flatMap(({ position, x, y }) => (position === null ? [] : [{ position, x, y }]))
  const times = (wanted: string) => places.filter(({ position }) => position === wanted).length
  const missing = positions.filter((position) => times(position) === 0)
  const twice = positions.filter((position) => times(position) > 1)
  const unknown = [...new Set(read.flatMap(({ mark, position }) => (position === null ? [mark] : [])))]
  if (missing.length + twice.length + unknown.length > 0) {
    return faulty({ code: 'layout-positions', missing, twice, unknown })
  }
  return { understood: true, value: { shape: shapeOf(places), places: fromCorner(places) } }
}

/** The position that a mark names: as written, else in other letters where only one is meant. */
function named(mark: string, positions: readonly string[]): string | null {
  if (positions.includes(mark)) return mark
  const [one, ...others] = positions.filter((position) => isSame(position, mark))
  return one !== undefined && others.length === 0 ? one : null
}

function isSame(position: string, mark: string): boolean {
  return position.toLowerCase() === mark.toLowerCase()
}

function shapeOf(places: readonly PlacedPosition[]): LayoutShape {
  const across = (values: number[]) => Math.max(...values) - Math.min(...values) + 1
  const rows = across(places.map(({ y }) => y))
  if (rows === 1) return 'row'
  return rows * across(places.map(({ x }) => x)) === places.length ? 'grid' : 'free'
}

/** Empty rows and columns around an outline are nothing on the machine. */
function fromCorner(places: readonly PlacedPosition[]): PlacedPosition[] {
  const left = Math.min(...places.map(({ x }) => x))
  const top = Math.min(...places.map(({ y }) => y))
  return places.map(({ position, x, y }) => ({ position, x: x - left, y: y - top }))
}

function unformed(typed: string, positions: readonly string[]): LayoutReading {
  const half = Math.ceil(positions.length / 2)
  const isGrid = /\d/.test(typed) && positions.length > 2 && half <= MOST_ACROSS
  const nearest = isGrid ? `2x${half}` : /^[co]/i.test(typed) ? 'circle' : 'row'
  return faulty({ code: 'layout-form', typed, nearest })
}

function tooWide(rows: number, columns: number): LayoutReading {
  return faulty({ code: 'layout-too-wide', rows, columns, most: MOST_ACROSS })
}

function faulty(fault: LayoutFault): LayoutReading {
  return { understood: false, fault }
}
