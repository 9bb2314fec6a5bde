import type { Shape } from '../../drawing.ts'
import type { PlanBox, PlanItem, PlanStep } from '../../printed-plan.ts'
import { gridRows } from './grid-rows.ts'
import {
  besideEachOther,
  type Cell,
  cautionRows,
  chip,
  chipHeight,
  closed,
  ems,
  heightOf,
  lineShapes,
  linesOf,
  partsOf,
  type Row,
  type Sheet,
  spaced,
  spaceRow,
  textRows,
} from './row.ts'
import { smallSymbol } from './small-symbol.ts'
import { boxSide, tickBox } from './tick-box.ts'

/** A step: its number and title beside its symbol, then what is to be done, each with a box to tick. */
export function stepRows(sheet: Sheet, step: PlanStep): Row[] {
  const left = sheet.left + numberWidth
  const whole: Cell = { x: left, width: sheet.right - left, size: ems.text }
  const small: Cell = { ...whole, size: ems.small }
  const end = step.isDone ? [] : [doneRow(sheet, left)]
  const rows = [
    headRow(sheet, step),
    ...step.cautions.flatMap((text) => cautionRows(sheet, text, { ...whole, weight: 'strong' })),
    ...(step.cautions.length > 0 ? [spaceRow(1, true)] : []),
    ...step.items.flatMap((item) => itemRows(sheet, item, left)),
    ...step.notes.flatMap((text) => closed(textRows(sheet, `· ${text}`, small))),
  ]
  const last = rows.length - 1
  return partsOf(`${step.no}  ${step.title}`, [
    // The box that closes a step does not stand alone on the next page.
    ...rows.map((row, index) => (index === last ? { ...row, keep: end.length > 0 } : row)),
    ...end,
    spaceRow(4),
  ])
}

const numberWidth = 15
const boxWidth = boxSide + 2.2
// What goes back stands on the left, where it lies beside it.
const share = 0.56
const gap = 4

function headRow(sheet: Sheet, { no, title, standing, isDone, before, code }: PlanStep): Row {
  const x = sheet.left + numberWidth
  const symbol = code === null ? null : smallSymbol(sheet, code, 0.6)
  const right = symbol === null ? sheet.right : symbol.left - 3
  const titleCell: Cell = { x, width: right - x, size: ems.heading, weight: 'strong' }
  const titleLines = linesOf(sheet, title, titleCell)
  const below = 1.2 + heightOf(titleLines.length, ems.heading) + 0.8
  const sign = chip(sheet, standing, { x, y: below }, isDone)
  const beforeCell: Cell = { x: x + sign.width + 2.5, width: right - x - sign.width - 2.5, size: ems.small }
  const beforeLines = linesOf(sheet, before, beforeCell)
  const number: Shape = {
    kind: 'text',
    x: sheet.left,
    y: 6.5,
    size: ems.title,
    weight: 'strong',
    text: String(no),
  }
  const rule: Shape = {
    kind: 'line',
    from: { x: sheet.left, y: 0 },
    to: { x: sheet.right, y: 0 },
    width: 0.35,
  }
  return {
    height: Math.max(
      symbol?.bottom ?? 0,
      below + Math.max(chipHeight, 0.45 + heightOf(beforeLines.length, ems.small)) + 1.6,
    ),
    shapes: [
      rule,
      number,
      ...lineShapes(titleLines, titleCell, 1.2),
      ...sign.shapes,
      ...lineShapes(beforeLines, beforeCell, below + 0.45),
      ...(symbol?.shapes ?? []),
    ],
    keep: true,
  }
}

function itemRows(sheet: Sheet, item: PlanItem, left: number): Row[] {
  switch (item.kind) {
    case 'tick':
      return tickRows(sheet, item, left)
    case 'grid':
      return closed([spaceRow(0.6, true), ...gridRows(sheet, item, left), spaceRow(1.2)])
    case 'write':
      return [writeRow(sheet, item.text, left)]
    default:
      return item satisfies never
  }
}

function tickRows(
  sheet: Sheet,
  { text, from, notes, boxes }: Extract<PlanItem, { kind: 'tick' }>,
  left: number,
): Row[] {
  const x = left + boxWidth
  const width = (sheet.right - x) * share
  const fromX = x + width + gap
  const [only, ...others] = boxes
  const isOne = others.length === 0
  const isAlone = from.length === 0
  const what: Cell = {
    x,
    width: isAlone ? sheet.right - x : width,
    size: ems.text,
    weight: from.length > 0 ? 'strong' : 'plain',
  }
  const where: Cell = { x: fromX, width: sheet.right - fromX, size: ems.text }
  const rows = besideEachOther(
    textRows(sheet, text, what),
    from.flatMap((each) => textRows(sheet, each, where)),
  )
  const [first, ...more] = rows
  if (!first) return []
  const box = only && isOne ? tickBox(left, 0.35, only.done) : []
  return closed([
    { ...first, shapes: [...first.shapes, ...box], height: Math.max(first.height, boxSide + 0.7) },
    ...more,
    ...notes.flatMap((note) => textRows(sheet, note, { x, width: sheet.right - x, size: ems.small })),
    ...(isOne ? [] : boxesRows(sheet, boxes, x)),
    spaceRow(1.1),
  ])
}

/** A box for each position, with its name beside it, as many in a row as there is room for. */
function boxesRows(sheet: Sheet, boxes: readonly PlanBox[], left: number): Row[] {
  const rows: Row[] = []
  let x = Number.POSITIVE_INFINITY
  for (const { label, done } of boxes) {
    const natural = sheet.typeface.widthOf(label, ems.text, 'plain')
    const width = Math.min(natural, sheet.right - left - boxSide - 1)
    if (x + boxSide + 1 + width > sheet.right) {
      rows.push({ height: boxSide + 1.4, shapes: [], keep: true })
      x = left
    }
    const row = rows.at(-1) as Row
    const cell: Cell = { x: x + boxSide + 1, width, size: ems.text }
    const lines = linesOf(sheet, label, cell)
    row.shapes.push(...tickBox(x, 0.6, done), ...lineShapes(lines, cell, 0.2))
    row.height = Math.max(row.height, heightOf(lines.length, ems.text) + 0.9)
    x += boxSide + 1 + width + 4
  }
  return rows
}

/** Words and a line to write on behind them. */
function writeRow(sheet: Sheet, text: string, left: number): Row {
  const cell: Cell = { x: left, width: (sheet.right - left) * share, size: ems.text }
  const lines = linesOf(sheet, text, cell)
  const last = lines.at(-1)
  const y = 2 + (last?.baseline ?? 0) + 0.6
  const from = { x: left + (last?.width ?? 0) + 2, y }
  return {
    height: y + 1.8,
    shapes: [...lineShapes(lines, cell, 2), { kind: 'line', from, to: { x: sheet.right, y }, width: 0.15 }],
    keep: false,
  }
}

function doneRow(sheet: Sheet, left: number): Row {
  const cell: Cell = { x: left + boxWidth, width: 12, size: ems.text, weight: 'strong' }
  const middle = left + (sheet.right - left) / 2
  const dateCell: Cell = { x: left + 24, width: 10, size: ems.text }
  const byCell: Cell = { x: middle + 4, width: 10, size: ems.text }
  const line = (from: number, to: number): Shape => ({
    kind: 'line',
    from: { x: from, y: 3.7 },
    to: { x: to, y: 3.7 },
    width: 0.15,
  })
  const row: Row = {
    height: boxSide + 0.8,
    shapes: [
      ...tickBox(left, 0.35, false),
      ...lineShapes(linesOf(sheet, 'done', cell), cell),
      ...lineShapes(linesOf(sheet, 'on', dateCell), dateCell),
      line(left + 29, middle),
      ...lineShapes(linesOf(sheet, 'by', byCell), byCell),
      line(middle + 9, sheet.right),
    ],
    keep: false,
  }
  return spaced(row, 2)
}
