import type { Command } from '../journal/command.ts'
import type { Refusal } from '../journal/refusal.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Borrowing } from '../lines/errand.ts'
import { findPieces, isOff, nearPieces } from '../lines/find-piece.ts'
import type { OutingId } from '../plan/waiting/waiting-facts.ts'
import type { Session } from './session.ts'
import type { Entry } from './stored-entry.ts'

/** What came of borrowing. `in`: the job that it is told of, the one that lends or the one that takes. */
export type Borrowed =
  | { kind: 'borrowed'; lent: Entry; taken: Entry }
  /** The words answer to several pieces of the job that lends, or to none; then those that are near. */
  | { kind: 'which'; pieces: PieceId[] }
  | { kind: 'no-such-piece'; near: PieceId[] }
  | { kind: 'itself' }
  | { kind: 'refused'; in: Side; refusal: Refusal }
  | { kind: 'not-recorded'; in: Side; error: Error }
  /** This job did not take it, and the entry that stands in the one that lends could not be taken back. */
  | { kind: 'still-lent'; lent: Entry; outing: OutingId }
type Side = 'lender' | 'taker'

/**
 * Lends pieces of one job to another: both records say so, or neither. The one that lends is written first; where the other
 * one cannot be, the first is taken back.
 */
export function borrow(lender: Session, taker: Session, asked: Borrowing): Borrowed {
  if (lender.state.job.no === taker.state.job.no) return { kind: 'itself' }
  const pieces = findPieces(asked.words, lender.state, isOff)
  const [piece, another] = pieces
  if (piece === undefined) return { kind: 'no-such-piece', near: nearPieces(asked.words, lender.state) }
  if (another !== undefined) return { kind: 'which', pieces }
  const take = taking(lender, asked)
  const foreseen = taker.foresee(take)
  if (!foreseen.ok) return { kind: 'refused', in: 'taker', refusal: foreseen.refusal }
  const lending = lender.send(lendingOf(taker, asked, piece))
  if (lending.kind === 'refused') return { kind: 'refused', in: 'lender', refusal: lending.refusal }
  if (lending.kind === 'not-recorded') return { kind: 'not-recorded', in: 'lender', error: lending.error }
  const { entry: lent } = lending
  const taken = taker.send(take)
  if (taken.kind === 'recorded') return { kind: 'borrowed', lent, taken: taken.entry }
  const undone = lender.send({ do: 'undo', entry: lent.n })
  if (undone.kind !== 'recorded' && lent.type === 'sent-out')
    return { kind: 'still-lent', lent, outing: lent.outing.id }
  return taken.kind === 'refused'
    ? { kind: 'refused', in: 'taker', refusal: taken.refusal }
    : { kind: 'not-recorded', in: 'taker', error: taken.error }
}

function taking({ state }: Session, { piece, count, instead, into }: Borrowing): Command {
  const { no, name } = state.job
  return { do: 'supply', piece, count, into, instead, borrowed: { job: no, name } }
}

function lendingOf({ state }: Session, { count }: Borrowing, piece: PieceId): Command {
  const { no, name } = state.job
  return { do: 'send-out', to: `job ${no}, ${name}`, job: no, pieces: [{ piece, count }] }
}
