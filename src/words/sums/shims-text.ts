import type { WorkedOut } from '../../session/work-out.ts'
import type { PlannedValve, ShimWork } from '../../trade/shims/shim-plan.ts'
import { counted, joined, sentence } from '../grammar.ts'
import { NOT_A_SPECIFICATION } from './figures.ts'

type ShimsWorkedOut = Extract<WorkedOut, { sum: 'shims' }>
type Worked = ShimsWorkedOut['worked']
type Unit = ShimsWorkedOut['unit']

/** Which shim goes where: the result, valve by valve, what is to be done, and the lines that record it. */
export function shimsText({ unit, worked }: ShimsWorkedOut): string[] {
  const { plan, odd, carryOut } = worked
  const lacking = plan.valves.filter(({ taken }) => taken.take === 'none')
  const moved = plan.valves.filter(({ taken }) => taken.take !== 'keep' && taken.take !== 'none')
  return [
    resultText(plan, unit),
    '',
    ...table(plan.valves, unit),
    ...section(
      moved.length === 0
        ? []
        : [
            'Needed = fitted + found - middle of what is wanted:',
            ...moved.map((valve) => needText(valve, unit)),
          ],
    ),
    ...section([
      ...plan.work.map((work) => workText(work, unit)),
      ...plan.over
        .filter(({ from }) => from !== null)
        .map(({ from, size }) => `The ${length(size, unit)} out of ${from} is left over.`),
      ...lacking.map((valve) => lackText(valve, unit)),
      ...odd.map(({ at, size, next }) => oddText({ at, size, next }, unit)),
    ]),
    ...carryOutText(carryOut),
    '',
    NOT_A_SPECIFICATION,
    ...(moved.length > 0 ? ['Measure again when it is done.'] : []),
  ]
}

function resultText(plan: Worked['plan'], unit: Unit): string {
  const out = plan.valves.filter(({ isWithin }) => !isWithin).length
  const touched = plan.valves.filter(({ taken }) => taken.take !== 'keep' && taken.take !== 'none').length
  const lacking = plan.valves.filter(({ taken }) => taken.take === 'none').map(({ position }) => position)
  const buy = plan.buy.map(({ size, count }) => `${count} × ${length(size, unit)}`)
  const state =
    out === 0
      ? `All ${plan.valves.length} within their range`
      : `${out} of ${plan.valves.length} out of range`
  const work = touched === 0 ? 'no shim moves' : `${counted(touched, 'valve')} to touch`
  return [
    `${state}: ${work}`,
    buy.length > 0 ? `, buy ${joined(buy)}` : touched > 0 ? ', nothing to buy' : '',
    lacking.length > 0 ? `; no shim for ${joined(lacking)}` : '',
    '.',
  ].join('')
}

const HEADS = ['valve', 'found', 'fitted', 'wanted', 'take', 'will be']

function table(valves: readonly PlannedValve[], unit: Unit): string[] {
  const rows = [HEADS, ...valves.map((valve) => rowOf(valve, unit))]
  const widths = HEADS.map((_, column) => Math.max(...rows.map((row) => (row[column] ?? '').length)))
  return rows.map((row) =>
    `  ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')}`.trimEnd(),
  )
}

function rowOf(valve: PlannedValve, unit: Unit): string[] {
  const { position, clearance, fitted, wanted, willBe, isWithin } = valve
  const side = isWithin ? '' : clearance < wanted.least ? ' tight' : ' wide'
  return [
    position,
    `${length(clearance, unit)}${side}`,
    length(fitted, unit),
    `${length(wanted.least, unit)}..${length(wanted.most, unit)}`,
    takeText(valve, unit),
    willBe === null ? '?' : length(willBe, unit),
  ]
}

function takeText({ taken, size }: PlannedValve, unit: Unit): string {
  const sized = size === null ? '' : length(size, unit)
  switch (taken.take) {
    case 'keep':
      return 'keep'
    case 'valve':
      return `${sized} from ${taken.position}`
    case 'bench':
      return `${sized} from the bench`
    case 'buy':
      return `${sized} new`
    case 'none':
      return 'none to be had'
    default:
      return taken satisfies never
  }
}

/** The arithmetic of a valve that gets another shim. */
function needText({ position, fitted, clearance, wanted, needed }: PlannedValve, unit: Unit): string {
  if (needed === null) return `  ${position}: not known`
  const middle = length((wanted.least + wanted.most) / 2, unit)
  return `  ${position}: ${length(fitted, unit)} + ${length(clearance, unit)} - ${middle} = ${length(needed.middle, unit)}; ${length(needed.least, unit)} to ${length(needed.most, unit)} will do`
}

function workText(work: ShimWork, unit: Unit): string {
  const { positions } = work
  const first = positions[0] ?? ''
  if (work.work === 'exchange') {
    return positions.length === 2
      ? `${joined(positions)} exchange their shims.`
      : `${joined(positions)}: each takes the shim of the next, ${positions.at(-1)} that of ${first}.`
  }
  const passed = positions
    .slice(0, -1)
    .map((position, at) => `${position} takes the shim of ${positions[at + 1]}`)
  const last = positions.at(-1) ?? ''
  return sentence([...passed, `${last} ${comesText(work.last, unit)}`].join(', '))
}

function comesText(last: Extract<ShimWork, { work: 'pass-on' }>['last'], unit: Unit): string {
  switch (last.take) {
    case 'bench':
      return `takes the ${length(last.size, unit)} from the bench`
    case 'buy':
      return `takes a new ${length(last.size, unit)}`
    case 'none':
      return 'waits for one'
    default:
      return last satisfies never
  }
}

function lackText(valve: PlannedValve, unit: Unit): string {
  const { position, needed, why } = valve
  if (why === null || why.code === 'no-clearance' || needed === null) {
    return `${position} has no clearance, so what it needs is not known: fit a thinner shim and measure again.`
  }
  const range = `${length(needed.least, unit)} to ${length(needed.most, unit)}`
  const { nearest } = why
  const leaves = nearest
    ? `: ${length(nearest.size, unit)} would leave ${length(nearest.clearance, unit)}`
    : ''
  return `${position} needs ${range}, ${WHY[why.code]}${leaves}.`
}

const WHY = {
  above: 'thicker than any to be had',
  below: 'thinner than any to be had',
  between: 'between two sizes to be had',
  'needed-elsewhere': 'and what would do is needed at other valves',
  'nothing-to-be-had': 'and there is none to be had',
} as const

function oddText({ at, size, next }: Worked['odd'][number], unit: Unit): string {
  const where = at === null ? 'on the bench' : `at ${at}`
  return `${length(size, unit)} ${where} is not in the list for sale (next: ${joined(next.map((mm) => length(mm, unit)))}): worn, or read wrongly?`
}

function carryOutText({ lines, fitted }: Worked['carryOut']): string[] {
  if (lines.length === 0) return []
  const when = fitted.length > 0 ? ', once the shims are off again' : ''
  return ['', `To record it${when}, write:`, ...lines.map((line) => `  ${line}`)]
}

function section(lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', ...lines]
}

/** A length as shims are marked: `2.45`, `2.475`; in inches `0.098`. */
function length(mm: number, unit: Unit): string {
  const [whole = '', decimals = ''] = (unit === 'in' ? mm / 25.4 : mm)
    .toFixed(4)
    .replace(/0+$/, '')
    .split('.')
  return `${whole}.${decimals.padEnd(unit === 'in' ? 3 : 2, '0')}`
}
