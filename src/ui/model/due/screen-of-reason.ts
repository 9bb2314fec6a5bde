import type { PlanRow, trialBalance } from '../../../session/views.ts'
import { comingBy } from '../../../session/waits.ts'
import type { Screen } from '../../navigation.ts'
import type { OrderId, OutingId, PieceId, State } from '../scene.ts'

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
    case 'piece-short':
    case 'piece-used':
      return whereAwaited(state, reason.piece)
    default:
      return null
  }
}

/** The page of what brings the piece, or what takes its place. */
function whereAwaited(state: State, piece: PieceId): Screen | null {
  const { by } = comingBy(state, piece)
  if (by === null) return null
  return isOuting(by) ? { at: 'outing', outing: by } : { at: 'order', order: by }
}

function isOuting(by: OutingId | OrderId): by is OutingId {
  return by.startsWith('b')
}
