import { finishView } from '../../session/finish-view.ts'
import type { Session } from '../../session/session.ts'
import { finishParts } from '../../words/finish-text.ts'
import { whenText } from './when.ts'

/** When the machine is together at the earliest, why not earlier, and what can be done meanwhile. */
export function finishAnswer(session: Session): { text: string[]; answer: unknown } {
  const view = finishView(session)
  const text = finishParts(session.stateNow(), view, whenText).flatMap(({ heading, lines }) =>
    heading === '' ? lines : [`${heading}:`, ...lines.map((line) => `  ${line}`)],
  )
  const times = view.schedule && Object.fromEntries(view.schedule.times)
  return { text, answer: { ...view, schedule: view.schedule && { ...view.schedule, times } } }
}
