import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import { boundTo } from '../plan/judging/judging.ts'
import { type JudgedPiece, judgedPieceOf } from './check-views.ts'

/** What is asked of a piece and what was decided about it; its checks in an order that never changes. */
export interface JudgingView extends JudgedPiece {
  /** What belongs together with it. */
  together: PieceId[]
}

/** Everything that is judged about one piece. */
export function judgingView(state: State, piece: PieceId): JudgingView {
  return { ...judgedPieceOf(state, piece), together: boundTo(state, piece) }
}

/** The pieces that are asked about as one set, itself among them: a matched set at one home, else the piece alone. */
export function judgedSet(state: State, piece: PieceId): PieceId[] {
  const own = state.ledger.accounts.get(piece)
  if (own?.piece.set === undefined) return [piece]
  const asked = new Set([...state.checks.values()].map((check) => check.piece))
  return [...state.ledger.accounts.values()].flatMap(({ piece: other, home }) =>
    other.set === own.piece.set && home.at === own.home.at && asked.has(other.id) ? [other.id] : [],
  )
}
