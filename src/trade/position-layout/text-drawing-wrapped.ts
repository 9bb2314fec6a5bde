import type { LayoutShape } from './position-layout.ts'
import type { LayoutDrawing, Room } from './text-drawing.ts'
import { between, type CellPlace, type DrawnRow, equallyWide, setInRows } from './text-drawing-cell.ts'
import { squarely, textRows } from './text-drawing-picture.ts'

/** Two dots at the end of a row that goes on, and at the beginning of one that does. */
const GOES_ON = ' ..'
const WENT_ON = '.. '

/** How a layout of a shape is drawn in parts, so many columns at a time; null where not even one column fits. */
export function wrappedPicture(
  shape: LayoutShape,
): (places: readonly CellPlace[], room: Room) => LayoutDrawing | null {
  // Half a circle is none.
  if (shape === 'circle') return () => null
  return (places, room) => {
    const width = room.width - WENT_ON.length - GOES_ON.length
    const parts = partsOf(equallyWide(places), width)
    if (!parts) return null
    const isOneRow = parts.every((part) => part.length === 1)
    const isAiry = !isOneRow || parts.length * 2 - 1 <= room.height
    const rows = parts.flatMap((part, index) => [
      ...(index > 0 && isAiry ? [[]] : []),
      ...part.map((row) => dotted(row, index > 0, index < parts.length - 1)),
    ])
    return { rows, form: 'wrapped' }
  }
}

/** Each part with as many columns as fit; the rows of all parts are the same rows. */
function partsOf(places: readonly CellPlace[], width: number): DrawnRow[][] | null {
  const xs = [...new Set(places.map(({ x }) => x))].toSorted((a, b) => a - b)
  const rows = textRows(places, 0)
  const parts: DrawnRow[][] = []
  for (let first = 0; first < xs.length; ) {
    let count = 0
    let drawn: DrawnRow[] | null = null
    for (let more = 1; first + more <= xs.length; more += 1) {
      const part = xs.slice(first, first + more)
      const cells = squarely(
        places.filter(({ x }) => part.includes(x)),
        width,
        rows,
        0,
      )
      if (!cells) break
      drawn = setInRows(cells)
      count = more
    }
    if (!drawn) return null
    parts.push(drawn)
    first += count
  }
  return parts
}

function dotted(row: DrawnRow, isContinued: boolean, goesOn: boolean): DrawnRow {
  const before = between(isContinued ? WENT_ON : ' '.repeat(WENT_ON.length))
  return row.length === 0 ? row : [before, ...row, ...(goesOn ? [between(GOES_ON)] : [])]
}
