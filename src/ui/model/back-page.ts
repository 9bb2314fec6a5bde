import { isEstimable } from '../../session/finish-view.ts'
import { outOfLimits } from '../../session/measure-views.ts'
import { secondLookView } from '../../session/second-look-view.ts'
import { type PlanRow, planRows, todoOf } from '../../session/views.ts'
import { measureLine } from '../../words/measurements/measure-text.ts'
import { stepName } from '../../words/names.ts'
import { briefReasonLines } from '../../words/reason-lines.ts'
import { secondLookText } from '../../words/second-look-text.ts'
import { goTo, type Page, rowsOf } from '../page.ts'
import { chipColumn } from '../signs.ts'
import { blank, type Line, line, strong, widthOf, wrap } from '../text/line.ts'
import { nextChoice, todoText } from './next.ts'
import { nextInLarge } from './next-in-large.ts'
import { heading, indented, withWords } from './rows.ts'
import { cardNow, perVersion, type Scene } from './scene.ts'
import { stepSign } from './step-signs.ts'

/** What goes back, in an order in which it can be done: each step with how it stands and every reason why. */
export function backPage(scene: Scene): Page {
  const { session, width } = scene
  const { state } = session
  const rows = perVersion(session, 'plan', () => planRows(session))
  const open = rows.filter(({ standing }) => standing !== 'done' && standing !== 'idle')
  const over = rows.filter((row) => !open.includes(row))
  // Worked out once, not with every key: a long plan takes its time.
  const lines = perVersion(session, `back rows ${width}`, () => [
    ...open.flatMap((row) => stepRows(scene, row)),
    ...(over.length > 0 && open.length > 0 ? [blank] : []),
    ...(over.length > 0 ? [heading('BEHIND YOU'), ...over.flatMap((row) => stepRows(scene, row))] : []),
    ...(open.length > 0 && !state.started && isEstimable(state)
      ? [blank, ...indented('"finish" says when it is together, and what can be done meanwhile', width)]
      : []),
  ])
  return {
    title: line(strong('WHAT GOES BACK'), `  ${open.length} to do, ${over.length} behind you`),
    top: [],
    rows: rowsOf(lines.length > 0 ? lines : [line('     Nothing has come off yet.')]),
    enter: nextChoice(scene),
    choice: (no) =>
      state.steps.has(no) ? goTo(`look at ${stepName(state, no)}`, { at: 'step', step: no }) : undefined,
    large: nextInLarge(scene, cardNow(session).next),
  }
}

const SIGN_WIDTH = 15

function stepRows({ session, width }: Scene, row: PlanRow): Line[] {
  const state = session.stateNow()
  const { step, reasons, overrides } = row
  const title = stepName(state, step.no).replace(/^step \d+, /, '')
  const head = line(
    strong(String(step.no).padStart(3)),
    '  ',
    ...chipColumn(stepSign(row), SIGN_WIDTH),
    ' ',
    strong(title),
  )
  const [next] = row.standing === 'underway' ? todoOf(session, step.no) : []
  const seconds = secondLookView(session, step.no)
  const under = [
    ...(next ? [`next: ${todoText(state, next)}`] : []),
    ...(step.due === undefined ? [] : [`due ${step.due}`]),
    ...(seconds ? [secondLookText(seconds)] : []),
    ...outOfLimits(state, step.no).map((measured) => measureLine(measured)),
    ...briefReasonLines(state, reasons),
    ...overrides.map((reason) => `overridden: ${reason}`),
  ]
  // One thing alone stands beside the name where it has room: a plan is read down its left side.
  const [alone] = under
  const beside = under.length === 1 && alone !== undefined ? line(head, ' · ', ...withWords(alone)) : null
  if (beside && widthOf(beside) <= width) return [beside]
  return [
    ...wrap(head, width, SIGN_WIDTH + 6),
    ...under.flatMap((text) => wrap(line('     · ', ...withWords(text)), width, 7)),
  ]
}
