import type { PrintedPlan } from '../../printed-plan.ts'
import {
  type Cell,
  closed,
  ems,
  heightOf,
  lineShapes,
  linesOf,
  type Row,
  type Sheet,
  spaceRow,
  textRows,
} from './row.ts'
import { smallSymbol } from './small-symbol.ts'

/** What the first page begins with: whether the machine may be started, and why not. */
export function openingRows(sheet: Sheet, { code, state, reasons, machine, notes }: PrintedPlan): Row[] {
  const symbol = smallSymbol(sheet, code, 0)
  const width = symbol.left - 4 - sheet.left
  const title: Cell = { x: sheet.left, width, size: ems.title, weight: 'strong' }
  const text: Cell = { x: sheet.left, width, size: ems.text }
  const titleLines = linesOf(sheet, 'The way back', title)
  const below = heightOf(titleLines.length, ems.title)
  const machineLines = linesOf(sheet, machine, text)
  const end = below + 0.6 + heightOf(machineLines.length, ems.text)
  const head: Row = {
    height: Math.max(symbol.bottom, end) + 2,
    shapes: [
      ...lineShapes(titleLines, title),
      ...lineShapes(machineLines, text, below + 0.6),
      ...symbol.shapes,
    ],
    keep: true,
  }
  const whole: Cell = { ...text, width: sheet.right - sheet.left }
  return [
    head,
    ...textRows(sheet, state, { ...whole, size: ems.heading, weight: 'strong' }),
    ...closed(textRows(sheet, reasons.join(' · '), whole)),
    spaceRow(1.6),
    ...notes.flatMap((note) => closed(textRows(sheet, `· ${note}`, { ...whole, size: ems.small }))),
    ...closed(textRows(sheet, HOW, { ...whole, size: ems.small })),
    spaceRow(4),
  ]
}

const HOW =
  'The steps stand in an order in which they can be done. Torques and angles are as the user typed them: the service manual of the machine decides.'

/** The heading of a part of the plan. */
export function sectionRows(sheet: Sheet, text: string): Row[] {
  const cell: Cell = {
    x: sheet.left,
    width: sheet.right - sheet.left,
    size: ems.heading + 0.6,
    weight: 'strong',
  }
  return [...textRows(sheet, text, cell), spaceRow(1.8, true)]
}
