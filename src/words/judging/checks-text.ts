import type { State } from '../../journal/state.ts'
import type { TriggerFacts } from '../../plan/judging/judging-facts.ts'
import type { CheckView, JudgedPiece } from '../../session/check-views.ts'
import { joined } from '../grammar.ts'
import { verdictLine } from '../measurements/measure-text.ts'
import { pieceName } from '../pieces.ts'
import { itemsText } from './asked-text.ts'
import { checkWords, VERDICTS } from './names.ts'

/** How a piece stands, in capitals as on the screens. */
const STANDINGS: Record<JudgedPiece['standing'], string> = {
  'not-asked': 'NOT ASKED',
  due: 'NOT CHECKED',
  accepted: 'GOOD',
  machine: 'NOT GOOD, to be machined',
  replace: 'NOT GOOD, to be replaced',
  clean: 'NOT CHECKED, to be cleaned and looked at again',
  wrong: 'NOT GOOD, the wrong one',
  gone: 'SENT BACK, the wrong one',
}

/** One piece with its checks, what was measured for them, and what was decided, line by line. */
export function judgedRows(
  state: State,
  { piece, standing, checks, verdict, comparison }: JudgedPiece,
): string[] {
  const decided = verdict
    ? [`    judged: ${VERDICTS[verdict.verdict]}${verdict.reason ? `, because ${verdict.reason}` : ''}`]
    : []
  const compared =
    comparison?.verdict === 'due' ? [`    to be compared with the old one, ${comparison.old}`] : []
  const isToCompare = standing === 'due' && comparison?.verdict === 'due'
  return [
    `${piece}  ${pieceName(state, piece)}: ${isToCompare ? 'NOT COMPARED' : STANDINGS[standing]}`,
    ...checks.flatMap(checkRows),
    ...compared,
    ...decided,
  ]
}

/** The user's own lists, each with what finding opens it. */
export function triggerRows(state: State, { id, when, items }: TriggerFacts): string[] {
  return [`${id}  when ${when}: ${itemsText(state, items)}`]
}

function checkRows({ check, readings }: CheckView): string[] {
  const sign = check.done === null ? 'o' : '✓'
  const said = check.done?.says ? `: ${check.done.says}` : ''
  const missing = (readings?.missing ?? []).filter((each) => each !== 'it')
  const lacks =
    readings && readings.missing.length > 0
      ? `, not measured yet${missing.length > 0 ? `: ${joined(missing)}` : ''}`
      : ''
  const measured = (readings?.readings ?? []).map(
    ({ measure, judged }) =>
      `        ${measure.id} ${measure.name}: ${verdictLine(measure.measurement, judged)}`,
  )
  return [`    ${sign} ${check.id}  ${checkWords(check)}${said}${lacks}`, ...measured]
}
