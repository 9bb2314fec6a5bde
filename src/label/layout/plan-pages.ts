import type { Drawing, Shape } from '../drawing.ts'
import { plainText } from '../plain-text.ts'
import type { PrintedPlan } from '../printed-plan.ts'
import type { Typeface } from '../typeface.ts'
import { fitText } from './fit-text.ts'
import type { About, LabelSize } from './laid.ts'
import { containerRows, looseRows } from './plan/container-rows.ts'
import { openingRows, sectionRows } from './plan/opening-rows.ts'
import { type Cell, ems, linesOf, type Row, type Sheet, shifted } from './plan/row.ts'
import { stepRows } from './plan/step-rows.ts'

/** The pages, or the characters that the fonts lack, and where they stand. */
export type LaidPlan =
  | { ok: true; pages: Drawing[] }
  | { ok: false; refusal: { code: 'no-glyph'; label: string; characters: string[] } }

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
  const sheet: Sheet = { typeface, dpi, left: margin, right: page.width - margin }
  const room = page.height - bodyTop - bottomMargin
  const bodies = [
    ...intoPages(stepsPart(sheet, clean), room),
    ...intoPages(containersPart(sheet, clean), room),
  ]
  const pages = bodies.map((shapes, index): Drawing => {
    const head = headShapes(sheet, clean, `page ${index + 1} of ${bodies.length}`)
    return { width: page.width, height: page.height, shapes: [...head, ...shifted(shapes, bodyTop)] }
  })
  return { ok: true, pages }
}

const margin = 14
const bottomMargin = 12
const bodyTop = 22

function stepsPart(sheet: Sheet, plan: PrintedPlan): Row[] {
  const before = plan.steps.filter(({ afterStart }) => !afterStart)
  const after = plan.steps.filter(({ afterStart }) => afterStart)
  return [
    ...openingRows(sheet, plan),
    ...before.flatMap((step) => stepRows(sheet, step)),
    ...(after.length > 0 ? sectionRows(sheet, 'After the first start') : []),
    ...after.flatMap((step) => stepRows(sheet, step)),
  ]
}

function containersPart(sheet: Sheet, { containers, loose }: PrintedPlan): Row[] {
  return [
    ...(containers.length > 0 ? sectionRows(sheet, 'What lies in the containers') : []),
    ...containers.flatMap((container) => containerRows(sheet, container)),
    ...(loose.length > 0 ? sectionRows(sheet, 'What lies elsewhere') : []),
    ...loose.flatMap((each) => looseRows(sheet, each)),
  ]
}

/** Cuts rows into pages where a row need not stay with the next; what is higher than a page is cut anywhere. */
function intoPages(rows: readonly Row[], room: number): Shape[][] {
  const pages: Shape[][] = []
  let y = Number.POSITIVE_INFINITY
  const begin = () => {
    pages.push([])
    y = 0
  }
  for (const group of groupsOf(rows)) {
    const height = group.reduce((sum, row) => sum + row.height, 0)
    // Room alone opens no page.
    const isSpace = group.every(({ shapes }) => shapes.length === 0)
    if (isSpace && (y === 0 || y + height > room)) continue
    if (y + height > room && (y > 0 || pages.length === 0)) begin()
    for (const row of group) {
      if (y + row.height > room && y > 0) begin()
      pages.at(-1)?.push(...shifted(row.shapes, y))
      y += row.height
    }
  }
  return pages
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
  const cell: Cell = { x: left, width: right - left - endWidth - 6, size, weight: 'strong' }
  const [whole, ...more] = linesOf(sheet, job, cell)
  const room = { area: { x: left, y: 0, width: cell.width, height: size * 2 }, taken: [] }
  const short = fitText(job, { typeface, size, weight: 'strong' }, room, 1)?.lines[0]?.text ?? ''
  const y = 14
  return [
    {
      kind: 'text',
      x: left,
      y,
      size,
      weight: 'strong',
      text: more.length === 0 ? (whole?.text ?? '') : short,
    },
    { kind: 'text', x: right - endWidth, y, size, weight: 'plain', text: end },
    { kind: 'line', from: { x: left, y: 16 }, to: { x: right, y: 16 }, width: 0.2 },
  ]
}

function missingIn(
  plan: PrintedPlan,
  typeface: Typeface,
): { code: 'no-glyph'; label: string; characters: string[] } | null {
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
