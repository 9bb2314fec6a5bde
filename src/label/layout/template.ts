import type { Drawing } from '../drawing.ts'
import type { SymbolTooSmall } from '../symbol/choose-symbol.ts'
import type { TemplateContent } from '../template-content.ts'
import type { Typeface } from '../typeface.ts'
import { type Arranged, arranged, type LayoutOnSheet, spanOf } from './template/arrange.ts'
import { bestCell, type CellNeeds, cellNeeds } from './template/cell.ts'
import { type ArrowTo, placeShapes } from './template/draw-places.ts'
import { type Field, LEAST_WIDTH_MM, MARGIN_MM, templateFrame } from './template/frame.ts'
import { measuredPlaces } from './template/measured.ts'

/** How a template is drawn. */
export interface TemplateAbout {
  typeface: Typeface
  /** Where on the sheet the arrows of the pieces point; null draws none. */
  arrow: ArrowTo | null
  /** Millimetres between neighbours on the machine, for a sheet at full size; null spreads them over the sheet. */
  pitch: number | null
  /** Dots to the inch of the printer. */
  dpi: number
}

export type TemplatePages =
  | { ok: true; pages: Drawing[]; spacing: { x: number; y: number; isFullSize: boolean } }
  | { ok: false; refusal: TemplateRefusal }

export type TemplateRefusal =
  | { code: 'template-characters'; text: string; characters: string[] }
  /** The layout is one of other positions. */
  | { code: 'template-places'; missing: string[]; twice: string[]; unknown: string[] }
  | { code: 'template-page-small'; page: Size; least: number }
  /**
   * So many places do not fit legibly. `fits` do in this shape, on the better of the two ways to turn the sheet; on
   * a sheet of columns and rows as so many of each, for a circle in all.
   */
  | {
      code: 'template-too-dense'
      positions: number
      fits: number
      columns: number | null
      rows: number | null
    }
  /** At this pitch names and pieces would lie over each other. */
  | { code: 'template-pitch-small'; pitch: number; least: number | null }
  /** At this pitch the sheet would have to be larger; `largest` is the pitch that fits, where one does. */
  | { code: 'template-pitch-large'; pitch: number; needs: Size; page: Size; largest: number | null }
  | SymbolTooSmall

interface Size {
  width: number
  height: number
}

/**
 * A sheet with a place for every piece of a set, as they lie on the machine: a hole for each bolt, of its thread with
 * 0.5 mm clearance, or a box to lay the piece on, with its position beside. The sheet is turned to landscape where the
 * places come out larger so. One page, or a refusal with its arithmetic: a drawing over several sheets that must be
 * pasted together would no longer be full size.
 * @param page the sheet, in millimetres
 */
export function templatePages(
  content: TemplateContent,
  layout: LayoutOnSheet,
  page: Size,
  about: TemplateAbout,
): TemplatePages {
  const refusal = unfit(content, layout, page, about.typeface)
  if (refusal) return { ok: false, refusal }
  const { typeface, arrow, pitch } = about
  const measured = measuredPlaces(content.places, typeface)
  const needs = cellNeeds(measured, typeface.widthOf(' ', 1, 'plain'), arrow !== null)
  const sheets: Sheet[] = []
  for (const size of turned(page)) {
    const frame = templateFrame(content, size, about)
    if (!('ok' in frame)) return { ok: false, refusal: frame }
    sheets.push({ size, ...frame, best: arranged(layout, needs, frame.field, pitch) })
  }
  const [sheet] = sheets
    .filter((each): each is Sheet & { best: Arranged } => each.best !== null)
    .sort((a, b) => b.best.cell.merit - a.best.cell.merit)
  if (!sheet) return { ok: false, refusal: tooLarge(layout, needs, sheets, pitch) }
  return {
    ok: true,
    pages: [drawn(content, layout, sheet, about)],
    spacing: { ...sheet.best.spacing, isFullSize: pitch !== null },
  }
}

interface Sheet {
  size: Size
  shapes: Drawing['shapes']
  field: Field
  best: Arranged | null
}

function unfit(
  content: TemplateContent,
  { places }: LayoutOnSheet,
  page: Size,
  typeface: Typeface,
): TemplateRefusal | null {
  if (Math.min(page.width, page.height) < LEAST_WIDTH_MM) {
    return { code: 'template-page-small', page, least: LEAST_WIDTH_MM }
  }
  const wanted = content.places.map(({ position }) => position)
  const drawnAt = places.map(({ position }) => position)
  const missing = wanted.filter((position) => !drawnAt.includes(position))
  const twice = [...new Set(drawnAt.filter((position, index) => drawnAt.indexOf(position) < index))]
  const unknown = drawnAt.filter((position) => !wanted.includes(position))
  if (missing.length + twice.length + unknown.length > 0) {
    return { code: 'template-places', missing, twice, unknown }
  }
  const { title, home, mark, edge, how, scale, check, job, container } = content
  const captions = content.places.flatMap(({ position, caption }) => [position, caption ?? ''])
  for (const text of [
    title,
    home,
    mark ?? '',
    edge,
    how,
    scale,
    check,
    job,
    container?.name ?? '',
    ...captions,
  ]) {
    const characters = typeface.missing(text)
    if (characters.length > 0) return { code: 'template-characters', text, characters }
  }
  return null
}

function turned({ width, height }: Size): Size[] {
  return [
    { width, height },
    { width: height, height: width },
  ]
}

/** The cells in the middle of the field, each around its own place. */
function drawn(
  content: TemplateContent,
  layout: LayoutOnSheet,
  { size, shapes, field, best: { cell, points } }: Sheet & { best: Arranged },
  { typeface, arrow }: TemplateAbout,
): Drawing {
  const span = spanOf(points)
  const left = field.x + (field.width - span.x - cell.width) / 2 - cell.left - least(points.map(({ x }) => x))
  const top = field.y + (field.height - span.y - cell.height) / 2 - cell.top - least(points.map(({ y }) => y))
  const placed = layout.places.flatMap(({ position }, index) => {
    const place = content.places.find((each) => each.position === position)
    const point = points[index]
    if (!place || !point) return []
    return placeShapes(place, { x: left + point.x, y: top + point.y }, cell, { typeface, arrow })
  })
  return { ...size, shapes: [...shapes, ...placed] }
}

function least(values: readonly number[]): number {
  return Math.min(...values)
}

const unlimited = { width: 5000, height: 5000 }
const finest = 0.5
const widest = 400

/** Why no sheet holds the layout, and what would be held. */
function tooLarge(
  layout: LayoutOnSheet,
  needs: CellNeeds,
  sheets: readonly Sheet[],
  pitch: number | null,
): TemplateRefusal {
  const fits = (each: LayoutOnSheet, at: number | null) =>
    sheets.some(({ field }) => arranged(each, needs, field, at) !== null)
  if (pitch === null) return tooDense(layout, needs, sheets, (each) => fits(each, null))
  const alone = arranged(layout, needs, unlimited, pitch)
  if (!alone) {
    const apart = pitches().find((each) => each > pitch && arranged(layout, needs, unlimited, each) !== null)
    return { code: 'template-pitch-small', pitch, least: apart ?? null }
  }
  const largest = pitches().findLast((each) => each < pitch && fits(layout, each))
  return {
    code: 'template-pitch-large',
    pitch,
    needs: sheetFor(alone, needs, sheets),
    page: sheets[0]?.size ?? unlimited,
    largest: largest ?? null,
  }
}

/** Lengths in steps of half a millimetre. */
function pitches(): number[] {
  return Array.from({ length: widest / finest }, (_, index) => (index + 1) * finest)
}

/** The sheet that the layout would take with the smallest cells, upright or across as it lies. */
function sheetFor({ points }: Arranged, needs: CellNeeds, sheets: readonly Sheet[]): Size {
  const span = spanOf(points)
  const cell = smallest(needs)
  const sheet = sheets.find(({ size }) => size.width > size.height === span.x > span.y) ?? sheets[0]
  const around = sheet
    ? { width: sheet.size.width - sheet.field.width, height: sheet.size.height - sheet.field.height }
    : { width: 2 * MARGIN_MM, height: 2 * MARGIN_MM }
  return {
    width: Math.max(LEAST_WIDTH_MM, Math.ceil(span.x + cell.width + around.width)),
    height: Math.max(LEAST_WIDTH_MM, Math.ceil(span.y + cell.height + around.height)),
  }
}

/** The narrowest room that holds a cell, with the lowest height that this takes. */
function smallest(needs: CellNeeds): Size {
  const lengths = Array.from({ length: 200 }, (_, index) => index + 4)
  const width = lengths.find((each) => bestCell(needs, each, unlimited.height)) ?? unlimited.width
  const height = lengths.find((each) => bestCell(needs, width, each)) ?? unlimited.height
  return { width, height }
}

function tooDense(
  layout: LayoutOnSheet,
  needs: CellNeeds,
  sheets: readonly Sheet[],
  fits: (layout: LayoutOnSheet) => boolean,
): TemplateRefusal {
  const positions = layout.places.length
  if (layout.shape === 'circle') {
    let most = 0
    let tooMany = positions
    while (tooMany - most > 1) {
      const count = Math.floor((most + tooMany) / 2)
      if (fits(circleOf(count))) most = count
      else tooMany = count
    }
    return { code: 'template-too-dense', positions, fits: most, columns: null, rows: null }
  }
  const grids = sheets.map(({ field }) => mostCells(needs, field))
  const [most] = grids.sort((a, b) => b.columns * b.rows - a.columns * a.rows)
  const { columns, rows } = most ?? { columns: 0, rows: 0 }
  return { code: 'template-too-dense', positions, fits: columns * rows, columns, rows }
}

function circleOf(count: number): LayoutOnSheet {
  const places = Array.from({ length: count }, (_, index) => {
    const turn = (2 * Math.PI * index) / count
    return { position: `${index + 1}`, x: Math.sin(turn), y: -Math.cos(turn) }
  })
  return { shape: 'circle', places }
}

/** How many of the smallest cells lie side by side and one below the other. */
function mostCells(needs: CellNeeds, field: Field): { columns: number; rows: number } {
  // The corners and two neighbours decide for the whole grid.
  const grid = (columns: number, rows: number): LayoutOnSheet => {
    const corners = [0, 1, columns - 1].flatMap((x) => [0, 1, rows - 1].map((y) => ({ x, y })))
    const within = corners.filter(({ x, y }) => x < columns && y < rows)
    const places = [
      ...new Map(within.map(({ x, y }) => [`${x},${y}`, { position: `${x},${y}`, x, y }])).values(),
    ]
    return { shape: 'grid', places }
  }
  const fits = (columns: number, rows: number) => arranged(grid(columns, rows), needs, field, null) !== null
  let best = { columns: 1, rows: 1 }
  for (let columns = 1; columns <= 40; columns += 1) {
    let rows = 0
    while (rows < 40 && fits(columns, rows + 1)) rows += 1
    if (columns * rows > best.columns * best.rows) best = { columns, rows }
    if (rows === 0) break
  }
  return best
}
