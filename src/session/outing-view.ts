import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import { isAllBack, isUnanswered } from '../plan/waiting/outings.ts'
import type { OutingFacts } from '../plan/waiting/waiting-facts.ts'

/** How what went out stands. `unanswered`: all is back, and nobody has said what was taken out of it there. */
export type OutingStanding = 'away' | 'overdue' | 'unanswered' | 'back'

/** What went out together, with what rides on it. */
export interface OutingView {
  outing: OutingFacts
  standing: OutingStanding
  /** What sits on the pieces that are away, and so went along. */
  riders: { piece: PieceId; count: number; on: PieceId }[]
}

/** An outing on the day of the state's clock. */
export function outingView(state: State, outing: OutingFacts): OutingView {
  return { outing, standing: standingOf(state, outing), riders: ridersOf(state, outing) }
}

function standingOf(state: State, outing: OutingFacts): OutingStanding {
  if (isAllBack(outing)) return isUnanswered(state, outing) ? 'unanswered' : 'back'
  return outing.due !== undefined && outing.due < state.clock.today ? 'overdue' : 'away'
}

function ridersOf({ ledger }: State, { pieces }: OutingFacts): OutingView['riders'] {
  return pieces.flatMap(({ piece: on, away }) =>
    (away === 0 ? [] : [...(ledger.byPlace.get(on) ?? [])]).map((piece) => ({
      piece,
      count: ledger.accounts.get(piece)?.at.get(on) ?? 0,
      on,
    })),
  )
}
