import type { PieceId } from '../../ledger/piece.ts'
import type { PlanFacts } from '../facts.ts'
import { isGone } from '../succession.ts'
import type { CheckFacts, CheckId, ComparedFeature, VerdictKind } from './judging-facts.ts'

/** Why a piece may not go back yet. */
export type JudgingReason =
  | { code: 'check-due'; check: CheckId; piece: PieceId }
  | { code: 'piece-judged'; piece: PieceId; verdict: Exclude<VerdictKind, 'fit-again'> }
  | { code: 'compare-due'; piece: PieceId; old: PieceId }
  | { code: 'compare-wrong'; piece: PieceId; old: PieceId }

/** How a piece stands: nobody asked, something still to be checked, a verdict, or accepted. `gone`: wrong, and sent back. */
export type Standing = 'not-asked' | 'due' | 'accepted' | Exclude<VerdictKind, 'fit-again'> | 'wrong' | 'gone'

/** The checks on a piece that are not done, oldest first. */
export function openChecks(facts: PlanFacts, piece: PieceId): CheckFacts[] {
  return checksOn(facts, piece).filter(({ done }) => done === null)
}

/** The checks on each piece that has any, gathered in one walk for whoever asks about many. */
export function checksByPiece(facts: PlanFacts): Map<PieceId, CheckFacts[]> {
  const by = new Map<PieceId, CheckFacts[]>()
  for (const check of facts.checks.values()) {
    const known = by.get(check.piece)
    if (known) known.push(check)
    else by.set(check.piece, [check])
  }
  return by
}

/**
 * Every reason of judging why a piece may not go back, nearest to hand first. Empty when it is accepted or nobody asked.
 * `checks`: those on the piece, where they are known already.
 */
export function judgingReasons(
  facts: PlanFacts,
  piece: PieceId,
  checks: readonly CheckFacts[] = checksOn(facts, piece),
): JudgingReason[] {
  const reasons: JudgingReason[] = []
  const verdict = facts.verdicts.get(piece)?.verdict
  if (verdict !== undefined && verdict !== 'fit-again') reasons.push({ code: 'piece-judged', piece, verdict })
  // What leaves for good needs no more looking at; a word that it may stay answers its checks.
  if (verdict === 'replace') return reasons
  const comparison = facts.comparisons.get(piece)
  // What is not here any more is wanted, not wrong: its home waits for the right one.
  if (comparison && comparison.verdict !== 'right' && !isGone(facts, piece)) {
    const code = comparison.verdict === 'due' ? 'compare-due' : 'compare-wrong'
    reasons.push({ code, piece, old: comparison.old })
  }
  for (const { id, done } of checks) {
    if (done === null && !facts.overrides.has(id)) reasons.push({ code: 'check-due', check: id, piece })
  }
  return reasons
}

/** How a piece stands by what was asked and decided. `checks`: those on the piece, where they are known already. */
export function standingOf(
  facts: PlanFacts,
  piece: PieceId,
  checks: readonly CheckFacts[] = checksOn(facts, piece),
): Standing {
  const [first] = judgingReasons(facts, piece, checks)
  if (first?.code === 'piece-judged') return first.verdict
  if (first?.code === 'compare-wrong') return 'wrong'
  if (!first && (facts.comparisons.get(piece)?.verdict ?? 'right') !== 'right') return 'gone'
  if (first) return 'due'
  const isAsked = facts.verdicts.has(piece) || facts.comparisons.has(piece) || checks.length > 0
  return isAsked ? 'accepted' : 'not-asked'
}

function checksOn(facts: PlanFacts, piece: PieceId): CheckFacts[] {
  return [...facts.checks.values()].filter((check) => check.piece === piece)
}

/** Every feature that was compared: a later word on one takes the place of an earlier one. */
export function lastSaid(
  before: readonly ComparedFeature[],
  said: readonly ComparedFeature[],
): ComparedFeature[] {
  const again = new Set(said.map(({ feature }) => feature))
  return [...before.filter(({ feature }) => !again.has(feature)), ...said]
}

/** What belongs together with a piece, by the user's word: judged bad, it takes these along. */
export function boundTo(facts: PlanFacts, piece: PieceId): PieceId[] {
  const found = new Set<PieceId>()
  // A bond of a bond is one too: caps with their head, the head with its shims.
  const open = [piece]
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    for (const { pieces } of facts.bonds) {
      if (!pieces.includes(next)) continue
      for (const other of pieces) if (!found.has(other)) open.push(other)
      for (const other of pieces) found.add(other)
    }
  }
  found.delete(piece)
  return [...found]
}
