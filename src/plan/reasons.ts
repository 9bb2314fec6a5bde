import type { Account } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import { owing } from './contents.ts'
import type { DifferenceId, FaultId, FluidId, MarkId, PlanFacts, StepFacts, TighteningId } from './facts.ts'
import type { JudgingReason } from './judging/judging.ts'
import type { WaitingReason } from './waiting/waiting-reasons.ts'

/** One reason why a step may not start or finish yet: facts only, the sentence is made elsewhere. */
export type Reason =
  | { code: 'still-stripping'; step: number }
  | { code: 'step-before'; step: number; built: StepFacts['built'] }
  | { code: 'not-cleared' }
  | { code: 'piece-short'; piece: PieceId; should: number; have: number }
  | { code: 'piece-away'; piece: PieceId; count: number; place: Place }
  | { code: 'piece-used'; piece: PieceId }
  /** What goes over to a new piece is still on the old one. */
  | { code: 'left-on-old'; piece: PieceId; count: number; on: PieceId; to: PieceId }
  | { code: 'fault-open'; fault: FaultId }
  | { code: 'count-open'; difference: DifferenceId }
  | { code: 'aid-in'; piece: PieceId; count: number; place: Place }
  | { code: 'not-home'; piece: PieceId; count: number; place: Place }
  | { code: 'look-due'; step: number }
  | { code: 'mark-open'; mark: MarkId }
  | { code: 'tighten-open'; tightening: TighteningId }
  | { code: 'fluid-open'; fluid: FluidId }
  | { code: 'turns-open'; step: number; turns: number; turned: number }
  | { code: 'check-open'; step: number }
  | JudgingReason
  | WaitingReason

/** A piece that is not accepted is passed over by a verdict with its reason, and by nothing else. */
export function isJudging(reason: Reason): reason is JudgingReason {
  return JUDGING.has(reason.code)
}

const JUDGING: ReadonlySet<string> = new Set<JudgingReason['code']>([
  'check-due',
  'piece-judged',
  'compare-due',
  'compare-wrong',
])

/** What of a piece is not home, by where it lies, and what is nowhere to be had. */
export function notHome(facts: PlanFacts, account: Account): Reason[] {
  const { lies, short } = owing(facts, account)
  const { piece, should } = account
  const reasons = lies.map(
    ({ place, count }): Reason => ({ code: 'not-home', piece: piece.id, count, place }),
  )
  if (short > 0) reasons.push({ code: 'piece-short', piece: piece.id, should, have: should - short })
  return reasons
}
