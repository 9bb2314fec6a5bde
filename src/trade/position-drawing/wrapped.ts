import type { LayoutShape } from '../position-layout/position-layout.ts'
import type { LayoutDrawing, Room } from './drawing.ts'
import { between, type CellPlace, type DrawnRow, equallyWide, setInRows } from './drawn-cell.ts'
import { squarely, textRows } from './picture.ts'

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
  const columns = columnsOf(places)
  const rows = textRows(places, 0)
  const set = (first: number, count: number) =>
    squarely(columns.slice(first, first + count).flat(), width, rows, 0)
  // Side by side so many fit in any case; more where their rows leave gaps.
  const least = Math.floor(width / (places[0]?.width ?? 1))
  if (least < 1) return null
  const parts: DrawnRow[][] = []
  for (let first = 0; first < columns.length; ) {
    let count = Math.min(least, columns.length - first)
    let cells = set(first, count)
    while (first + count < columns.length) {
      const more = set(first, count + 1)
      if (!more) break
      cells = more
      count += 1
    }
    if (!cells) return null
    parts.push(setInRows(cells))
    first += count
  }
  return parts
}

/** The places of each x, from the left. */
function columnsOf(places: readonly CellPlace[]): CellPlace[][] {
  const columns = new Map<number, CellPlace[]>()
  for (const place of places) {
    const column = columns.get(place.x)
    if (column) column.push(place)
    else columns.set(place.x, [place])
  }
  return [...columns].toSorted(([a], [b]) => a - b).map(([, column]) => column)
}

function dotted(row: DrawnRow, isContinued: boolean, goesOn: boolean): DrawnRow {
  const before = between(isContinued ? WENT_ON : ' '.repeat(WENT_ON.length))
  return row.length === 0 ? row : [before, ...row, ...(goesOn ? [between(GOES_ON)] : [])]
}
