import type { State } from '../journal/state.ts'
import type { FinishView, StepToDo } from '../session/finish-view.ts'
import type { Wait } from '../session/waits.ts'
import { consumableName } from './consumables/names.ts'
import { say } from './cures.ts'
import { dueText } from './days.ts'
import { durationWords } from './durations.ts'
import { counted, sentence } from './grammar.ts'
import { liesAt } from './lookups.ts'
import { stepName } from './names.ts'
import { countedPiece } from './pieces.ts'
import { containerPlace } from './places.ts'

/** One heading with the lines under it; without a heading, what stands first. */
export interface FinishPart {
  heading: string
  lines: string[]
}

/** `when`: a moment as a person says it where they are. */
export type When = (at: string) => string

/** When the machine is together at the earliest, why not earlier, and what can be done meanwhile. */
export function finishParts(state: State, view: FinishView, when: When): FinishPart[] {
  const { steps, ready, free } = view
  const waiting = steps.filter(({ waits }) => waits.length > 0)
  const parts = [
    { heading: '', lines: summary(state, view, when) },
    { heading: 'WHY NOT EARLIER', lines: chainLines(state, view) },
    { heading: 'WAITS FOR WHAT IS NOT HERE', lines: waiting.flatMap((each) => waitLines(state, each)) },
    { heading: 'CAN START NOW', lines: ready.map((no) => stepLine(state, view, no)) },
    { heading: 'CAN BE DONE AFTER THAT, MEANWHILE', lines: free.map((no) => stepLine(state, view, no)) },
    { heading: 'NO TIME SAID, COUNTED AS NOTHING', lines: unknownLines(state, view) },
  ]
  return parts.filter(({ lines }) => lines.length > 0)
}

function summary(state: State, view: FinishView, when: When): string[] {
  const { schedule, hands, steps, from } = view
  if (state.steps.size === 0) return ['Nothing has come off yet.']
  if (steps.length === 0) return ['Nothing is left to do before the first start.']
  if (schedule === null) return ['No estimate: some steps would each wait for the next, without end.']
  const at = new Date(Date.parse(from) + schedule.finish * 60_000).toISOString()
  return [
    'ESTIMATE, from the times and days that were said. Nothing waits for it.',
    sentence(`together ${when(at)} at the earliest, in ${durationWords(schedule.finish)}`),
    sentence(`${durationWords(hands)} of work for one pair of hands, ${counted(steps.length, 'step')} to do`),
    ...notCounted(state, steps),
  ]
}

/** What may come at any time moves the finish by nobody knows how much. */
function notCounted(state: State, steps: readonly StepToDo[]): string[] {
  const waits = steps.flatMap((each) => each.waits)
  const open = waits.filter(({ due, isLate }) => due === undefined || isLate)
  const pieces = [...new Set(open.map(({ piece }) => piece))].map((piece) =>
    countedPiece(state, piece, awaited(state, piece)),
  )
  if (pieces.length === 0) return []
  const [first = ''] = pieces
  const what = pieces.length === 1 ? first : counted(pieces.length, 'thing')
  return [
    sentence(`not counted, for ${pieces.length === 1 ? 'it is' : 'they are'} late or without a day: ${what}`),
  ]
}

function chainLines(state: State, { schedule, steps }: FinishView): string[] {
  if (!schedule || schedule.finish === 0) return []
  const lines = schedule.chains.map((chain) => {
    const [first] = chain
    const start = first === undefined ? 0 : (schedule.times.get(first)?.earliestStart ?? 0)
    const wait = start > 0 ? [`${durationWords(start)} until what it needs is here`] : []
    return [...wait, ...chain.map((id) => linkText(state, steps, id))].join(', then ')
  })
  return schedule.moreChains ? [...lines, 'and other ways that take as long'] : lines
}

function linkText(state: State, steps: readonly StepToDo[], id: number | `s${number}`): string {
  if (typeof id === 'string') {
    const { cureMinutes = 0 } = state.consumables.get(id) ?? {}
    return `${consumableName(state, id)}, sets ${durationWords(cureMinutes)}`
  }
  const minutes = steps.find(({ step }) => step === id)?.minutes
  return `${stepName(state, id)}${minutes ? `, ${durationWords(minutes.minutes)}` : ''}`
}

function waitLines(state: State, { step, waits }: StepToDo): string[] {
  return waits.map(
    (wait) =>
      `${stepName(state, step)}: ${countedPiece(state, wait.piece, awaited(state, wait.piece))}${comesText(state, wait)}`,
  )
}

function comesText(state: State, { by, due }: Wait): string {
  if (by === null) return ', nothing is on its way'
  const when = due === undefined ? 'nobody said when' : dueText(due, state.clock.today)
  const outing = state.outings.get(by as `b${number}`)
  return outing ? `, at ${outing.to} (${by}), ${when}` : ` (${by}), ${when}`
}

/** How many of a piece are owed at home and not here. A lot of which none can go home is owed whole. */
function awaited(state: State, piece: `p${number}`): number {
  const { should = 1, at } = state.ledger.accounts.get(piece) ?? {}
  const owed = Math.max(1, should - (at?.get('machine') ?? 0))
  const here = liesAt(state, piece)
    .filter(({ place }) => place === 'bench' || containerPlace(place) !== null)
    .reduce((sum, { count }) => sum + count, 0)
  const isNoneGood = state.used.has(piece) || state.verdicts.get(piece)?.verdict === 'replace'
  return isNoneGood || here >= owed ? owed : owed - here
}

function stepLine(state: State, { steps }: FinishView, no: number): string {
  const { minutes = null } = steps.find(({ step }) => step === no) ?? {}
  const under = state.steps.get(no)?.built === 'underway' ? ', under way' : ''
  if (minutes === null) return `${stepName(state, no)}${under}`
  const by = minutes.by === 'took' ? ' as it took to come off' : ''
  return `${stepName(state, no)}${under}, ${durationWords(minutes.minutes)}${by}`
}

function unknownLines(state: State, { unknown }: FinishView): string[] {
  const [first] = unknown
  if (first === undefined) return []
  const names = unknown.slice(0, 5).map((no) => stepName(state, no))
  const more = unknown.length > 5 ? [`and ${unknown.length - 5} more`] : []
  return [...names, ...more, `${say(`step ${first} minutes 90`)} says how long one takes`]
}
