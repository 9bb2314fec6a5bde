import type { Shape } from '../../drawing.ts'
import type { PlanItem } from '../../printed-plan.ts'
import {
  type Cell,
  cautionRows,
  closed,
  ems,
  heightOf,
  lineShapes,
  linesOf,
  type Row,
  type Sheet,
  textRows,
} from './row.ts'
import { boxSide, tickBox } from './tick-box.ts'

/** A tightening: under each fastener a box for each pass, in as many blocks as the width asks for. */
export function gridRows(sheet: Sheet, grid: Extract<PlanItem, { kind: 'grid' }>, left: number): Row[] {
  const whole: Cell = { x: left, width: sheet.right - left, size: ems.text, weight: 'strong' }
  const blocks = blocksOf(sheet, grid.fasteners, left + passWidth)
  return closed([
    ...textRows(sheet, grid.text, whole),
    ...cautionRows(sheet, grid.caution, { ...whole, size: ems.small }),
    ...blocks.flatMap((block) => blockRows(sheet, grid, block, left)),
  ])
}

const passWidth = 30
const gap = 1.6
const widestName = 26

interface Block {
  /** The fasteners from this one on, so many of them. */
  first: number
  columns: { x: number; width: number }[]
}

function blocksOf(sheet: Sheet, fasteners: readonly string[], left: number): Block[] {
  const widths = fasteners.map((name) =>
    Math.min(widestName, Math.max(boxSide + 1, sheet.typeface.widthOf(name, ems.small, 'strong'))),
  )
  const blocks: Block[] = []
  let x = Number.POSITIVE_INFINITY
  for (const [index, width] of widths.entries()) {
    if (x + width > sheet.right) {
      blocks.push({ first: index, columns: [] })
      x = left
    }
    blocks.at(-1)?.columns.push({ x, width })
    x += width + gap
  }
  return blocks
}

function blockRows(
  sheet: Sheet,
  { fasteners, passes }: Extract<PlanItem, { kind: 'grid' }>,
  { first, columns }: Block,
  left: number,
): Row[] {
  const heads = columns.map((column, index) => {
    const cell: Cell = { x: column.x, width: column.width, size: ems.small, weight: 'strong' }
    return { cell, lines: linesOf(sheet, fasteners[first + index] ?? '', cell) }
  })
  const most = Math.max(1, ...heads.map(({ lines }) => lines.length))
  const head: Row = {
    height: heightOf(most, ems.small) + 0.9,
    shapes: heads.flatMap(({ lines, cell }) =>
      lineShapes(lines, cell, 0.8 + heightOf(most - lines.length, ems.small)),
    ),
    keep: true,
  }
  return closed([head, ...passes.map((pass) => passRow(sheet, pass, { first, columns }, left))])
}

function passRow(
  sheet: Sheet,
  { text, done }: { text: string; done: readonly boolean[] },
  { first, columns }: Block,
  left: number,
): Row {
  const cell: Cell = { x: left, width: passWidth - 2, size: ems.small }
  const lines = linesOf(sheet, text, cell)
  const boxes = columns.flatMap(({ x }, index): Shape[] => tickBox(x, 0.2, done[first + index] === true))
  return {
    height: Math.max(boxSide + 1.2, heightOf(lines.length, ems.small) + 0.6),
    shapes: [...lineShapes(lines, cell, 0.1), ...boxes],
    keep: true,
  }
}
