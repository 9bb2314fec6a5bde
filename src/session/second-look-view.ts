import { minutesToWait, secondLines } from '../plan/waiting/second-looks.ts'
import type { SecondLine, SecondLookFacts } from '../plan/waiting/waiting-facts.ts'
import type { Session } from './session.ts'

/** How the second look at a critical step stands. */
export interface SecondLookView {
  step: number
  isDone: boolean
  /** The user's: how long the same person waits after the work. */
  afterMinutes: number
  /** How long whoever asks has still to wait; 0 for somebody else. */
  waitMinutes: number
  lines: { line: SecondLine; seen: SecondLookFacts | null }[]
}

/** How the second look at a step stands; null where nobody asked for one. */
export function secondLookView(session: Session, no: number): SecondLookView | null {
  const state = session.stateNow()
  const step = state.steps.get(no)
  const contents = session.gates().contents.get(no)
  if (!step?.critical || !contents) return null
  const looks = state.secondLooks.get(no) ?? []
  return {
    step: no,
    isDone: step.built === 'done',
    afterMinutes: step.critical.afterMinutes,
    waitMinutes: minutesToWait(step, state.clock),
    lines: secondLines(state, contents).map((line) => ({
      line,
      seen: looks.find((look) => look.line === line) ?? null,
    })),
  }
}
