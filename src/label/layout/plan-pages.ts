import type { Drawing, Shape } from '../drawing.ts'
import { plainText } from '../plain-text.ts'
import type { PrintedPlan } from '../printed-plan.ts'
import type { Typeface } from '../typeface.ts'
import type { About, LabelSize, LayoutRefusal } from './laid.ts'
import { containerRows, looseRows } from './plan/container-rows.ts'
import { openingRows, sectionRows } from './plan/opening-rows.ts'
import { ems, type Row, type Sheet, shifted, spaceRow } from './plan/row.ts'
import { stepRows } from './plan/step-rows.ts'
import { wrap } from './plan/wrap.ts'

/** The pages; or the characters that the fonts lack and where they stand, or that the page is none to read from. */
export type LaidPlan = { ok: true; pages: Drawing[] } | { ok: false; refusal: PlanRefusal }

type PlanRefusal = Extract<LayoutRefusal, { code: 'no-glyph' | 'label-too-small' }>

/**
 * Lays the printed plan out on pages of that size in millimetres: the steps, then the containers on a page of their
 * own. Every page has the job, the date and its number in its head; nothing is cut, long texts are broken.
 */
export function planPages(
  plan: PrintedPlan,
  page: LabelSize,
  { typeface, dpi }: Pick<About, 'typeface' | 'dpi'>,
): LaidPlan {
  const clean = cleaned(plan) as PrintedPlan
  const refusal = missingIn(clean, typeface)
  if (refusal) return { ok: false, refusal }
  const { width, height } = page
  if (Math.min(width, height) < leastSide) {
    return { ok: false, refusal: { code: 'label-too-small', label: 'plan', width, height } }
  }
  const sheet: Sheet = { typeface, dpi, left: margin, right: width - margin }
  const room = height - bodyTop - bottomMargin
  const bodies = [stepsPart(sheet, clean, room), containersPart(sheet, clean)].flatMap((rows) =>
    intoPages(rows, room, (what) => againRow(sheet, what)),
  )
  const pages = bodies.map((shapes, index): Drawing => {
    const head = headShapes(sheet, clean, `page ${index + 1} of ${bodies.length}`)
    return { width, height, shapes: [...head, ...shifted(shapes, bodyTop)] }
  })
  return { ok: true, pages }
}

// About A5: below it the columns are too narrow for a code and a name.
const leastSide = 140
const margin = 14
const bottomMargin = 12
const bodyTop = 22

function stepsPart(sheet: Sheet, plan: PrintedPlan, room: number): Row[] {
  const before = plan.steps.filter(({ afterStart }) => !afterStart)
  const after = plan.steps.filter(({ afterStart }) => afterStart)
  return [
    ...openingRows(sheet, plan),
    ...before.flatMap((step) => together(stepRows(sheet, step), room / 3)),
    ...(after.length > 0 ? sectionRows(sheet, 'After the first start') : []),
    ...after.flatMap((step) => together(stepRows(sheet, step), room / 3)),
  ]
}

/** Rows that stay on one page where they are no higher than that: nobody turns the page for half a short step. */
function together(rows: readonly Row[], most: number): Row[] {
  const height = rows.reduce((sum, row) => sum + row.height, 0)
  const last = rows.length - 1
  return height > most ? [...rows] : rows.map((row, index) => (index < last ? { ...row, keep: true } : row))
}

function containersPart(sheet: Sheet, { containers, loose }: PrintedPlan): Row[] {
  return [
    ...(containers.length > 0 ? sectionRows(sheet, 'What lies in the containers') : []),
    ...containers.flatMap((container) => containerRows(sheet, container)),
    ...(containers.length > 0 && loose.length > 0 ? [spaceRow(5)] : []),
    ...(loose.length > 0 ? sectionRows(sheet, 'What lies elsewhere') : []),
    ...loose.flatMap((each) => looseRows(sheet, each)),
  ]
}

/**
 * Cuts rows into pages where a row need not stay with the next; what is higher than a page is cut anywhere. A page that
 * begins in the middle of something says of what.
 */
function intoPages(rows: readonly Row[], room: number, again: (what: string) => Row): Shape[][] {
  const pages: Shape[][] = []
  let y = Number.POSITIVE_INFINITY
  let isFresh = true
  const put = (row: Row) => {
    pages.at(-1)?.push(...shifted(row.shapes, y))
    y += row.height
  }
  const begin = ({ of }: Row) => {
    pages.push([])
    y = 0
    if (of !== undefined) put(again(of))
    isFresh = true
  }
  for (const group of groupsOf(rows)) {
    const [first] = group
    if (!first) continue
    const height = group.reduce((sum, row) => sum + row.height, 0)
    // Room alone opens no page.
    if (group.every(({ shapes }) => shapes.length === 0) && y + height > room) continue
    if (y + height > room && !(isFresh && pages.length > 0)) begin(first)
    for (const row of group) {
      if (y + row.height > room && !isFresh) begin(row)
      put(row)
      isFresh = false
    }
  }
  return pages
}

function againRow(sheet: Sheet, what: string): Row {
  const { typeface, left, right } = sheet
  const text = shortenedTo(right - left, `${what}, continued`, typeface)
  return {
    height: 6,
    shapes: [{ kind: 'text', x: left, y: ems.text, size: ems.text, weight: 'strong', text }],
    keep: true,
  }
}

function groupsOf(rows: readonly Row[]): Row[][] {
  const groups: Row[][] = []
  let keep = false
  for (const row of rows) {
    if (keep) groups.at(-1)?.push(row)
    else groups.push([row])
    keep = row.keep
  }
  return groups
}

function headShapes(sheet: Sheet, { job, date }: PrintedPlan, number: string): Shape[] {
  const { typeface, left, right } = sheet
  const size = ems.text
  const end = `${date} · ${number}`
  const endWidth = typeface.widthOf(end, size, 'plain')
  const text = shortenedTo(right - left - endWidth - 6, job, typeface)
  const y = 14
  return [
    { kind: 'text', x: left, y, size, weight: 'strong', text },
    { kind: 'text', x: right - endWidth, y, size, weight: 'plain', text: end },
    { kind: 'line', from: { x: left, y: 16 }, to: { x: right, y: 16 }, width: 0.2 },
  ]
}

/** One line of strong text, at most so wide; what is told in full elsewhere may be cut here. */
function shortenedTo(width: number, text: string, typeface: Typeface): string {
  const widthOf = (part: string) => typeface.widthOf(part, ems.text, 'strong')
  if (widthOf(text) <= width) return text
  return `${wrap(text, width - widthOf('…'), widthOf)[0] ?? ''}…`
}

function missingIn(plan: PrintedPlan, typeface: Typeface): PlanRefusal | null {
  const { steps, containers, loose, ...opening } = plan
  const parts: [string, unknown][] = [
    ['plan', opening],
    ...steps.map((step): [string, unknown] => [`plan, step ${step.no}`, step]),
    ...containers.map((each): [string, unknown] => [`plan, ${each.heading}`, each]),
    ...loose.map((each): [string, unknown] => [`plan, ${each.place}`, each]),
  ]
  for (const [label, part] of parts) {
    const characters = typeface.missing(textsOf(part).join(' '))
    if (characters.length > 0) return { code: 'no-glyph', label, characters }
  }
  return null
}

function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(textsOf)
}

/** Every text of the plan without what is not seen or moves a cursor. */
function cleaned(value: unknown): unknown {
  if (typeof value === 'string') return plainText(value)
  if (Array.isArray(value)) return value.map(cleaned)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, cleaned(each)]))
}
