import type { Found } from '../../lines/read-found.ts'
import { foundView } from '../../session/found-view.ts'
import type { Session } from '../../session/session.ts'
import { foundHeading, foundHomeText, foundToolsText, nothingFoundText } from '../../words/found-text.ts'

/** More than these are no help to a hand that holds a bolt; all are in the data. */
const SHOWN = 12

/** Where something that turned up may belong, with what to do about each home. */
export function foundAnswer(session: Session, found: Found): { text: string[]; answer: unknown } {
  const view = foundView(session, found)
  const state = session.stateNow()
  const tools = foundToolsText(state, view)
  if (view.homes.length === 0) return { text: [...tools, ...nothingFoundText(view)], answer: view }
  const lines = view.homes.slice(0, SHOWN).flatMap((home, index) => {
    const { what, why, acts } = foundHomeText(state, view, home)
    return [`${String(index + 1).padStart(3)}  ${what}`, `     ${why}`, ...acts.map((act) => `     ${act}`)]
  })
  const rest = view.homes.length - SHOWN
  return {
    text: [
      ...tools,
      foundHeading(view),
      ...lines,
      ...(rest > 0 ? [`     and ${rest} less likely: say more of it, such as its length or its drive`] : []),
    ],
    answer: view,
  }
}
