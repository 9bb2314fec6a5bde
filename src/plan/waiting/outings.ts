import type { PieceId } from '../../ledger/piece.ts'
import type { StepContents } from '../contents.ts'
import type { PlanFacts } from '../facts.ts'
import type { OutingFacts } from './waiting-facts.ts'
import type { WaitingReason } from './waiting-reasons.ts'

/** A shop that had a piece of the step may have taken something out of it: until somebody says so, the step waits. */
export function outingReasons(facts: PlanFacts, contents: StepContents): WaitingReason[] {
  const pieces = new Set(contents.pieces.map(({ piece }) => piece.id))
  return [...facts.outings.values()]
    .filter(
      (outing) =>
        isAsked(facts, outing) &&
        outing.pieces.some(({ piece, count, away }) => away < count && pieces.has(piece)),
    )
    .map(({ id }) => ({ code: 'out-unanswered', outing: id }))
}

/** Nobody has said yet what the shop took out, and nobody has passed that over. It is not asked of what is lent. */
function isAsked(facts: PlanFacts, { id, tookOut, job }: OutingFacts): boolean {
  return tookOut === null && job === undefined && !facts.overrides.has(id)
}

/** All is back, and nobody has said yet what the shop took out. */
export function isUnanswered(facts: PlanFacts, outing: OutingFacts): boolean {
  return isAllBack(outing) && isAsked(facts, outing)
}

/** Whether some of it is back, and nobody has said yet what the shop took out: then that can be said, or passed over. */
export function isAnswerDue(facts: PlanFacts, outing: OutingFacts): boolean {
  return isAsked(facts, outing) && outing.pieces.some(({ count, away }) => away < count)
}

/** What is out and has some of a piece, the first that went first. */
export function outingsWith({ outings }: PlanFacts, id: PieceId): OutingFacts[] {
  return [...outings.values()].filter(({ pieces }) =>
    pieces.some(({ piece, away }) => piece === id && away > 0),
  )
}

/** Whether nothing of it is away any more. */
export function isAllBack({ pieces }: OutingFacts): boolean {
  return pieces.every(({ away }) => away === 0)
}
