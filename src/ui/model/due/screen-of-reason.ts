import type { PlanRow, trialBalance } from '../../../session/views.ts'
import type { Screen } from '../../navigation.ts'
import type { PieceId, State } from '../scene.ts'

type Reason = PlanRow['reasons'][number]
type Leftover = ReturnType<typeof trialBalance>[number]

/** Where the next act is that a reason waits for, when it has a page of its own; null where words lift it. */
export function screenOfReason(state: State, reason: Reason | Leftover): Screen | null {
  switch (reason.code) {
    case 'check-due':
    case 'piece-judged':
      return { at: 'judge', piece: reason.piece }
    case 'compare-due':
    case 'compare-wrong':
      return { at: 'compare', piece: reason.piece }
    case 'out-unanswered':
      return { at: 'outing', outing: reason.outing }
    case 'piece-away':
      return whereAwaited(state, reason.piece)
    case 'piece-short':
    case 'piece-used':
      return orderedFor(state, reason.piece)
    default:
      return null
  }
}

function whereAwaited(state: State, piece: PieceId): Screen | null {
  const outing = [...state.outings.values()].find(({ pieces }) =>
    pieces.some((each) => each.piece === piece && each.away > 0),
  )
  return outing ? { at: 'outing', outing: outing.id } : orderedFor(state, piece)
}

/** The line that brings the piece, or what takes its place. */
function orderedFor(state: State, piece: PieceId): Screen | null {
  const order = [...state.orders.values()].find(
    (line) => line.piece === piece && line.cancelled === null && line.arrived - line.returned < line.count,
  )
  return order ? { at: 'order', order: order.id } : null
}
