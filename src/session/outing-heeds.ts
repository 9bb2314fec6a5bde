import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import { isAllBack, isAnswerDue } from '../plan/waiting/outings.ts'
import type { OutingFacts } from '../plan/waiting/waiting-facts.ts'
import { type OutingView, outingView } from './outing-view.ts'
import type { Entry } from './stored-entry.ts'

/** What is worth a look when pieces go out, and when they come back. */
export type OutingHeed =
  /** What sits on what went out, and so goes along. */
  | { heed: 'goes-along'; view: OutingView }
  | { heed: 'taken-out-there'; outing: OutingFacts }
  | { heed: 'still-away'; outing: OutingFacts }
  /** What was to come of it, now that it is back. */
  | { heed: 'expected'; outing: OutingFacts }
  /** Given back by another job, whose record cannot know it. */
  | { heed: 'given-back'; outing: OutingFacts }
  /** It was sent to be put right, and is still judged as it was. */
  | { heed: 'still-judged'; piece: PieceId }

/** What to say beside an entry that sends pieces out or takes them back. */
export function outingHeeds(state: State, entry: Entry): OutingHeed[] {
  if (entry.type === 'sent-out') {
    const outing = state.outings.get(entry.outing.id)
    const view = outing && outingView(state, outing)
    return view && view.riders.length > 0 ? [{ heed: 'goes-along', view }] : []
  }
  if (entry.type !== 'came-back') return []
  const outing = state.outings.get(entry.outing)
  if (!outing) return []
  const back = entry.moves.filter(({ from }) => from === 'out').map(({ piece }) => piece)
  const heeds: OutingHeed[] = []
  if (!isAllBack(outing)) heeds.push({ heed: 'still-away', outing })
  if (isAnswerDue(state, outing)) heeds.push({ heed: 'taken-out-there', outing })
  if (back.length > 0 && outing.expects !== undefined) heeds.push({ heed: 'expected', outing })
  if (back.length > 0 && outing.job !== undefined) heeds.push({ heed: 'given-back', outing })
  for (const piece of new Set(back)) {
    if (state.verdicts.get(piece)?.verdict === 'machine') heeds.push({ heed: 'still-judged', piece })
  }
  return heeds
}
