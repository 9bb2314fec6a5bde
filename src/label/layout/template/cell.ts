import { linesTaken, type MeasuredPlace } from './measured.ts'

/**
 * What is drawn at each place, alike for all of a sheet, in millimetres around the place itself: the figure (a hole
 * or a box to lay the piece on) with its middle on the place, the name and the caption outside of it, so that the
 * piece never covers them.
 */
export interface Cell {
  /** The room it takes, from the place: left and top are negative. */
  left: number
  top: number
  width: number
  height: number
  arrangement: 'above' | 'beside'
  figure: { width: number; height: number }
  nameSize: number
  captionSize: number
  captionLines: number
  /** How good it is to read and to use; comparable between cells of one sheet. */
  merit: number
}

/** What the cells of a sheet must hold, from its places. */
export interface CellNeeds {
  /** The widest name, at an em of 1. */
  name: number
  /** The words of each caption, alike ones once, and a space, at an em of 1. */
  captions: readonly MeasuredPlace['words'][]
  space: number
  hasArrow: boolean
  /** Side of the square that the largest bolt with its head takes; 0 without bolts. */
  hole: number
  hasBoxes: boolean
}

/** What a bolt needs more than its thread to be pushed through paper, in millimetres of diameter; common practice. */
export const CLEARANCE_MM = 0.5
/** How far the cross hair stands out of its circle. */
export const HAIR_MM = 2

const smallestName = 3.5
const largestName = 12
const smallestCaption = 2.2
const largestCaption = 4.4
const mostLines = 3
const leastBox = { width: 12, height: 9 }
const largestBox = { width: 62, height: 48 }
export const ASIDE = 1
export const LEADING = 1.2
// A column made as wide as its widest word must hold that word.
const rounding = 1e-9
/** An arrow beside the name: its side and the gap before it, in ems. */
export const ARROW = { side: 0.95, gap: 0.4 }

// The flange of a hexagon flange bolt is a little under 2.4 times its thread (ISO 4162, from memory).
const headOfThread = 2.5

/** Gathers what all the cells of a sheet must hold. */
export function cellNeeds(places: readonly MeasuredPlace[], space: number, hasArrow: boolean): CellNeeds {
  const across = places.flatMap(({ diameterMm }) =>
    diameterMm === null ? [] : [Math.max(diameterMm * headOfThread, diameterMm + CLEARANCE_MM + 2 * HAIR_MM)],
  )
  return {
    name: Math.max(...places.map(({ nameWidth }) => nameWidth)),
    captions: [
      ...new Map(places.map(({ caption, stands, words }) => [`${stands} ${caption}`, words])).values(),
    ],
    space,
    hasArrow,
    hole: Math.max(0, ...across),
    hasBoxes: places.some(({ diameterMm }) => diameterMm === null),
  }
}

/** The best cell that fits a room of that width and height, or null where not even the smallest does. */
export function bestCell(needs: CellNeeds, width: number, height: number): Cell | null {
  const above = largestOf((name) => cellAbove(needs, name, width, height))
  const beside = largestOf((name) => cellBeside(needs, name, width, height))
  if (!above || !beside) return above ?? beside
  // A name over its piece is what one expects; beside it only where that is clearly better.
  return beside.merit > 1.2 * above.merit ? beside : above
}

function largestOf(cellWith: (nameSize: number) => Cell | null): Cell | null {
  let best: Cell | null = null
  for (let name = largestName; name >= smallestName; name -= 0.5) {
    const cell = cellWith(name)
    if (cell && cell.merit > (best?.merit ?? 0)) best = cell
  }
  return best
}

function cellAbove(needs: CellNeeds, name: number, width: number, height: number): Cell | null {
  if (rowWidth(needs, name) > width || needs.hole > width) return null
  const caption = captionIn(needs, name, width)
  if (!caption) return null
  const around = name + ASIDE + (caption.lines > 0 ? ASIDE + caption.lines * caption.size * LEADING : 0)
  const figure = figureIn(needs, width, height - around)
  if (!figure) return null
  // As wide as what is drawn, and no wider.
  const used = Math.min(width, Math.max(figure.width, rowWidth(needs, name), caption.width))
  return {
    left: -used / 2,
    top: -(figure.height / 2 + ASIDE + name),
    width: used,
    height: figure.height + around,
    arrangement: 'above',
    figure,
    nameSize: name,
    captionSize: caption.size,
    captionLines: caption.lines,
    merit: meritOf(needs, name, figure),
  }
}

function cellBeside(needs: CellNeeds, name: number, width: number, height: number): Cell | null {
  const column = Math.max(rowWidth(needs, name), widestWord(needs) * captionSize(name))
  const caption = captionIn(needs, name, column)
  if (!caption || name + caption.lines * caption.size * LEADING > height) return null
  const figure = figureIn(needs, width - column - ASIDE, height)
  if (!figure) return null
  const text = name + caption.lines * caption.size * LEADING
  const tall = Math.max(figure.height, text)
  return {
    left: -figure.width / 2,
    top: -tall / 2,
    width: figure.width + ASIDE + column,
    height: tall,
    arrangement: 'beside',
    figure,
    nameSize: name,
    captionSize: caption.size,
    captionLines: caption.lines,
    merit: meritOf(needs, name, figure),
  }
}

function rowWidth(needs: CellNeeds, name: number): number {
  return name * (needs.name + (needs.hasArrow ? ARROW.gap + ARROW.side : 0))
}

function widestWord({ captions }: CellNeeds): number {
  return Math.max(0, ...captions.flatMap((words) => words.map(({ width }) => width)))
}

function captionSize(name: number): number {
  return Math.min(largestCaption, Math.max(smallestCaption, name * 0.42))
}

/** The caption of every place set in a column, shortened only where it is as small as it may be. */
function captionIn(
  needs: CellNeeds,
  name: number,
  column: number,
): { size: number; lines: number; width: number } | null {
  const size = captionSize(name)
  const taken = needs.captions.map((words) => linesTaken(words, column / size + rounding, needs.space))
  const lines = Math.max(0, ...taken)
  if (lines > mostLines && (size > smallestCaption || lines === Number.POSITIVE_INFINITY)) return null
  return { size, lines: Math.min(lines, mostLines), width: lines > 0 ? column : 0 }
}

/** A box as large as there is room, or as much as the largest bolt takes. */
function figureIn(needs: CellNeeds, width: number, height: number): Cell['figure'] | null {
  if (width < needs.hole || height < needs.hole) return null
  if (!needs.hasBoxes) return { width: needs.hole, height: needs.hole }
  if (width < leastBox.width || height < leastBox.height) return null
  return { width: Math.min(width, largestBox.width), height: Math.min(height, largestBox.height) }
}

/** A larger name is better, and so is a larger box. */
function meritOf({ hasBoxes }: CellNeeds, name: number, figure: Cell['figure']): number {
  return hasBoxes
    ? Math.sqrt(name) * Math.sqrt(Math.min(figure.width, 1.5 * figure.height) * figure.height)
    : name
}
