import { groupedCode } from '../../code.ts'
import type { Shape } from '../../drawing.ts'
import type { LooseOnes, PlanContainer } from '../../printed-plan.ts'
import {
  besideEachOther,
  type Cell,
  cautionRows,
  chip,
  chipHeight,
  closed,
  ems,
  partsOf,
  type Row,
  type Sheet,
  spaced,
  spaceRow,
  textRows,
} from './row.ts'

/** A container: on the left what is written on it and where it stands, on the right what it holds and for where. */
export function containerRows(sheet: Sheet, container: PlanContainer): Row[] {
  const { heading, code, part, stands, what, where, status, warnings } = container
  const name: Cell = { x: sheet.left, width: leftWidth, size: ems.text + 0.4, weight: 'strong' }
  const text: Cell = { ...name, size: ems.text, weight: 'plain' }
  const right = sheet.left + leftWidth + gap
  const held: Cell = { x: right, width: sheet.right - right, size: ems.text, weight: 'strong' }
  const goes: Cell = { ...held, weight: 'plain' }
  const onLeft = [
    ...textRows(sheet, heading, name),
    ...textRows(sheet, groupedCode(code), { ...text, weight: 'strong' }),
    ...(stands === null ? [] : textRows(sheet, stands, text)),
    ...(part === null ? [] : textRows(sheet, `${part} for its step`, text)),
  ]
  const onRight = [
    statusRow(sheet, status, right),
    ...what.flatMap((each) => textRows(sheet, each, held)),
    ...where.flatMap((each) => textRows(sheet, `→ ${each}`, goes)),
    ...warnings.flatMap((each) => cautionRows(sheet, each, { ...goes, size: ems.small })),
  ]
  return partsOf(heading, ruled(sheet, closed(besideEachOther(onLeft, onRight))))
}

/** What lies in no container, by where it is. */
export function looseRows(sheet: Sheet, { place, what }: LooseOnes): Row[] {
  const name: Cell = { x: sheet.left, width: leftWidth, size: ems.text + 0.4, weight: 'strong' }
  const right = sheet.left + leftWidth + gap
  const held: Cell = { x: right, width: sheet.right - right, size: ems.text }
  const rows = what.flatMap((each) => closed(textRows(sheet, each, held)))
  const [first, ...more] = besideEachOther(textRows(sheet, place, name), rows)
  return first ? partsOf(place, ruled(sheet, [first, ...more.map((row) => ({ ...row, keep: false }))])) : []
}

const leftWidth = 56
const gap = 5

function statusRow(sheet: Sheet, status: string, x: number): Row {
  const isPlain = status === 'FIT AGAIN'
  return { height: chipHeight + 0.8, shapes: chip(sheet, status, { x, y: 0 }, !isPlain).shapes, keep: true }
}

function ruled(sheet: Sheet, rows: readonly Row[]): Row[] {
  const rule: Shape = {
    kind: 'line',
    from: { x: sheet.left, y: 0 },
    to: { x: sheet.right, y: 0 },
    width: 0.2,
  }
  const [first, ...more] = rows
  if (!first) return []
  const top = spaced(first, 1.6)
  return [{ ...top, shapes: [rule, ...top.shapes] }, ...more, spaceRow(2.2)]
}
