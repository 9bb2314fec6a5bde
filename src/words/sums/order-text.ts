import type { State } from '../../journal/state.ts'
import type { WorkedOut } from '../../session/work-out.ts'
import { say } from '../cures.ts'
import { joined, sentence } from '../grammar.ts'
import { tighteningName } from '../names.ts'
import { ORDER_SOURCES, ruleWay } from '../order-rules.ts'
import { patternTrouble } from '../pattern-troubles.ts'
import { NOT_A_SPECIFICATION } from './figures.ts'

type Order = Extract<WorkedOut, { sum: 'order' }>
type Found = Extract<Order['worked'], { isFound: true }>
type Fault = Extract<Order['worked'], { isFound: false }>['fault']
type SetOrder = Found['set'][number]

/** The order of tightening by a rule, drawn, beside what was set; the manual's order holds. */
export function orderText(state: State, { of, worked }: Order): string[] {
  if (!worked.isFound) return faultText(state, worked.fault)
  const { rule, source, order, loosening, isProposed, drawing } = worked
  return [
    ...inRows(order, ''),
    sentence(`rule: ${rule}, ${ORDER_SOURCES[source]}`),
    sentence(ruleWay(rule, order.length)),
    '',
    ...drawing.map((row) => (row === '' ? '' : `  ${row}`)),
    '',
    ...(isProposed && 'piece' in of
      ? [`Drawn as the names suggest; ${say(`layout ${of.piece}: 2x4`)} draws how they lie.`]
      : []),
    ...inRows(loosening, 'Loosened in reverse: '),
    ...othersText(worked),
    ...worked.set.flatMap((set) => setText(state, set, worked)),
    "The manual's own order goes before any rule.",
    NOT_A_SPECIFICATION,
  ]
}

function faultText(state: State, fault: Fault): string[] {
  if (fault.code !== 'rule-not-for-shape') {
    const { what, lines, cure } = patternTrouble(state, fault)
    return [what, ...lines, cure]
  }
  const { rule, shape, others } = fault
  return [
    sentence(`the rule ${rule} is not for ${SHAPES[shape]}`),
    sentence(
      `here it goes ${joined(
        others.map((other) => say(`by ${other}`)),
        'or',
      )}`,
    ),
  ]
}

const SHAPES: Record<Extract<Fault, { code: 'rule-not-for-shape' }>['shape'], string> = {
  row: 'a row',
  grid: 'a grid',
  circle: 'a circle',
  free: 'a free outline',
}

function othersText({ others }: Found): string[] {
  if (others.length === 0) return []
  return [sentence(`other rules for it: ${joined(others.map((other) => say(`by ${other}`)))}`)]
}

function setText(state: State, { tightening, orderBy, difference }: SetOrder, { rule }: Found): string[] {
  const name = tighteningName(state, tightening)
  const by = orderBy === 'manual' ? "the manual's order" : orderBy === null ? 'the names' : `rule ${orderBy}`
  return [sentence(`${name} goes by ${by}, which holds`), sentence(differenceWords(difference, rule))]
}

function differenceWords(difference: SetOrder['difference'], rule: Found['rule']): string {
  if (difference === null) return 'it is not for the places drawn here'
  switch (difference.code) {
    case 'same':
      return 'it is the order of this rule'
    case 'mirrored':
      return 'it is the order of this rule, begun elsewhere or going the other way'
    case 'reversed':
      return 'it is the order of this rule backwards, as for loosening'
    case 'different': {
      const { at, manual, ruled, isBy } = difference
      const other = isBy === null ? '' : `; it follows rule ${isBy}`
      return `at place ${at} it has ${manual ?? 'nothing'}, rule ${rule} has ${ruled ?? 'nothing'}${other}`
    }
    default:
      return difference satisfies never
  }
}

const most = 74

/** Names in their order, as many in a row as fit. */
function inRows(names: readonly string[], before: string): string[] {
  const rows = [before]
  for (const [index, name] of names.entries()) {
    const text = index === names.length - 1 ? name : `${name}, `
    const row = rows.at(-1) ?? ''
    if (row.length + text.trimEnd().length > most && row.trim() !== '') rows.push(`  ${text}`)
    else rows[rows.length - 1] = row + text
  }
  return rows.map((row) => row.trimEnd())
}
