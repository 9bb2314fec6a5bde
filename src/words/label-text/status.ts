import type { State } from '../../journal/state.ts'
import type { Account } from '../../ledger/account.ts'
import type { Place } from '../../ledger/place.ts'
import { isStray } from '../pieces.ts'

/**
 * What is to become of a piece, in a word for a label. The list is closed:
 * - `FIT AGAIN`: came off, and its home waits for it.
 * - `NEW`: came for this job in place of another, and its home waits for it.
 * - `USED, DO NOT FIT`: single-use, and was on the machine once.
 * - `OLD, DO NOT FIT`: another has taken its home.
 * - `TOOL`: a tool, or an aid that is out of the machine; it goes back to the toolbox.
 * - `TO DECIDE`: more than its home wants, or nobody knows where it belongs.
 */
export type PieceStatus = 'FIT AGAIN' | 'NEW' | 'USED, DO NOT FIT' | 'OLD, DO NOT FIT' | 'TOOL' | 'TO DECIDE'

/**
 * The same for a whole container, and beyond it:
 * - `MIXED`: more than one of these lie in it; then each line says which, unless it is FIT AGAIN.
 * - `HOLDS OTHERS`: no pieces, but other containers.
 * - `EMPTY`: nothing in it.
 * - `VOID`: its label holds no more.
 */
export type ContainerStatus = PieceStatus | 'MIXED' | 'HOLDS OTHERS' | 'EMPTY' | 'VOID'

/** What is to become of those of a piece that lie in a place. */
export function statusOf(state: State, account: Account, place: Place): PieceStatus {
  const { piece, should, at } = account
  if (piece.kind === 'aid' || piece.kind === 'tool') return 'TOOL'
  if (isStray(account)) return 'TO DECIDE'
  if (should === 0) return isReplaced(state, account) ? 'OLD, DO NOT FIT' : 'TO DECIDE'
  if (state.used.has(piece.id)) return 'USED, DO NOT FIT'
  const owed = should - (at.get('machine') ?? 0)
  // What the home is full of, this cannot go to. A surplus among the rest is a warning: nobody can say which it is.
  if (owed <= 0 && place !== 'machine') return 'TO DECIDE'
  return piece.replaces === undefined ? 'FIT AGAIN' : 'NEW'
}

/** One word for all of them; `none` is what holds where there is none. */
export function commonStatus(statuses: Iterable<PieceStatus>, none: ContainerStatus): ContainerStatus {
  const [first, ...others] = new Set(statuses)
  if (first === undefined) return none
  return others.length > 0 ? 'MIXED' : first
}

function isReplaced(state: State, { piece }: Account): boolean {
  for (const other of state.ledger.accounts.values()) if (other.piece.replaces === piece.id) return true
  return false
}
