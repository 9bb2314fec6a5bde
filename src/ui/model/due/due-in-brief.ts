import { type DueView, dueView } from '../../../session/due-view.ts'
import { counted } from '../../../words/grammar.ts'
import { lateText } from '../../../words/waiting/late-text.ts'
import type { Scene } from '../scene.ts'

/** So many rows are seen at a glance on the card. */
const MOST = 2

/** What should be here by now, the longest overdue first. */
export function overdueTexts({ session }: Scene): string[] {
  const state = session.stateNow()
  const { late } = dueView(state)
  const shown = late.slice(0, MOST).map((thing) => lateText(state, thing).replace(/^OVERDUE /, ''))
  const more = late.length - MOST
  return more > 0 ? [...shown, `and ${more} more: look with ".6"`] : shown
}

/** How much is to be checked and awaited, in one sentence; none where there is nothing. */
export function dueTexts({ session }: Scene): string[] {
  const said = countsOf(dueView(session.stateNow()))
  return said.length === 0 ? [] : [`${said.join(', ')}: look with ".6"`]
}

function countsOf({ checks, comparisons, judged, outings, orders, missing }: DueView): string[] {
  const asked = checks.reduce((sum, each) => sum + each.checks.length, 0)
  const wanted = orders.filter(({ standing }) => standing === 'wanted').length
  return [
    asked > 0 ? counted(asked, 'check') : '',
    comparisons.length > 0 ? `${comparisons.length} to compare` : '',
    judged.length > 0 ? `${judged.length} judged and not done` : '',
    outings.length > 0 ? `${outings.length} out` : '',
    wanted > 0 ? `${wanted} to buy` : '',
    orders.length > wanted ? `${orders.length - wanted} ordered` : '',
    missing.length > 0 ? `${missing.length} missing or broken` : '',
  ].filter(Boolean)
}
