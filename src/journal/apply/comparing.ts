import { accountOf } from '../../ledger/ledger.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { lastSaid } from '../../plan/judging/judging.ts'
import type { ComparisonFacts } from '../../plan/judging/judging-facts.ts'
import type { EntryOf } from '../entry.ts'
import type { State } from '../state.ts'
import { carry } from './moves.ts'

/** A new piece is to be held beside the old one; `order`: the line by which it came. */
export function beginComparison(
  state: State,
  { piece, old }: Pick<ComparisonFacts, 'piece' | 'old'>,
  order: ComparisonFacts['order'],
): void {
  accountOf(state.ledger, piece)
  accountOf(state.ledger, old)
  if (piece === old) throw new Error(`${piece} is beside itself`)
  if (order !== undefined && !state.orders.has(order)) throw new Error(`no order ${order}`)
  state.comparisons.set(piece, { piece, old, features: [], verdict: 'due', order })
}

/** What was found beside the old one. */
export function noteComparison(
  state: State,
  { piece, old, features, verdict, moves, order }: EntryOf<'compared'>,
): void {
  if (!state.comparisons.has(piece)) beginComparison(state, { piece, old }, order)
  const comparison = state.comparisons.get(piece) as ComparisonFacts
  comparison.features = lastSaid(comparison.features, features)
  endComparison(state, piece, verdict)
  carry(state, moves)
}

/** A comparison comes to a verdict; what came by an order counts as wrong there for as long as it is. */
export function endComparison(state: State, piece: PieceId, verdict: ComparisonFacts['verdict']): void {
  const comparison = state.comparisons.get(piece)
  if (!comparison) return
  const line = comparison.order === undefined ? undefined : state.orders.get(comparison.order)
  const was = comparison.verdict
  const { entered } = accountOf(state.ledger, piece)
  if (line && was !== 'wrong' && verdict === 'wrong') line.wrong += entered
  if (line && was === 'wrong' && verdict !== 'wrong') line.wrong = Math.max(0, line.wrong - entered)
  comparison.verdict = verdict
}
