import { outOfLimits } from '../../session/measure-views.ts'
import { secondLookView } from '../../session/second-look-view.ts'
import type { Session } from '../../session/session.ts'
import type { PlanRow, StepStanding } from '../../session/views.ts'
import { measureLine } from '../../words/measurements/measure-text.ts'
import { onTheWayBack } from '../../words/names.ts'
import { reasonLines } from '../../words/reason-lines.ts'
import { secondLookText } from '../../words/second-look-text.ts'

/** The way back: every step in an order in which it can be done, and what blocks it. */
export function backText(session: Session, rows: readonly PlanRow[]): string[] {
  const state = session.stateNow()
  if (rows.length === 0) return ['Nothing has come off yet.']
  const later = rows.findIndex(({ step }) => step.way === 'after-start')
  return rows.flatMap((row, index) => [
    ...(index === later ? ['after the first start:'] : []),
    stepLine(row),
    ...secondLook(session, row.step.no),
    ...row.overrides.map((reason) => `      overridden: ${reason}`),
    ...outOfLimits(state, row.step.no).map((measured) => `      ${measureLine(measured)}`),
    ...reasonLines(state, row.reasons).map((text) => `      ${text}`),
  ])
}

function secondLook(session: Session, no: number): string[] {
  const view = secondLookView(session, no)
  return view ? [`      ${secondLookText(view)}`] : []
}

/** A step in one line: `  4  ready     Valve cover`. */
export function stepLine({ step, standing, again }: PlanRow): string {
  const sign = again && standing === 'blocked' ? 'redo, blocked' : SIGNS[standing]
  const title = step.way === 'both' && standing !== 'stripping' ? onTheWayBack(step.title) : step.title
  const due = step.due === undefined ? '' : ` (due ${step.due})`
  return `${String(step.no).padStart(3)}  ${sign.padEnd(10)} ${title}${due}`
}

const SIGNS: Record<StepStanding, string> = {
  stripping: 'coming off',
  ready: 'ready',
  blocked: 'blocked',
  underway: 'under way',
  done: 'done',
  redo: 'again',
  idle: 'nothing',
}
