import type { Account } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { Check } from '../../trade/inspection/check.ts'
import { checksFor } from '../../trade/inspection/checks-for.ts'
import type { PartKind } from '../../trade/inspection/name-ends.ts'
import { partKinds } from '../../trade/inspection/part-kind.ts'
import { owedAtHome } from '../contents.ts'
import type { PlanFacts } from '../facts.ts'
import type { CheckKind } from './judging-facts.ts'

/** Checks that the kind of thing suggests, for a piece or for each of a set. */
export interface CheckProposal {
  pieces: PieceId[]
  checks: Check[]
}

/** A check of each kind for each piece. */
export type ProposedCheck = { piece: PieceId; kind: CheckKind; what: string[] }

// Every job has them by the dozen: what is wrong with one is seen in the hand.
const HARDWARE: ReadonlySet<PartKind> = new Set([
  'bolt',
  'stud',
  'nut',
  'dowel',
  'circlip',
  'clamp',
  'threaded plug',
])

/**
 * What is off the machine, goes back, and is of a known kind: one proposal for a set, none for what is single-use, replaced,
 * judged, or has a check already. Common practice; the machine's service manual decides.
 */
export function checkProposals(facts: PlanFacts): CheckProposal[] {
  const asked = new Set([...facts.checks.values()].map(({ piece }) => piece))
  const bySet = new Map<string, CheckProposal>()
  const known = new Set<string>()
  for (const account of facts.ledger.accounts.values()) {
    const { piece } = account
    if (!isRetained(facts, account)) continue
    const key = setOf(account)
    if (asked.has(piece.id) || facts.verdicts.has(piece.id)) known.add(key)
    const proposal = bySet.get(key)
    if (proposal) {
      // The ends of a hose are one hose.
      if (piece.kind !== 'connection') proposal.pieces.push(piece.id)
      continue
    }
    if (partKinds(piece.name).every((kind) => HARDWARE.has(kind))) continue
    const checks = checksFor(piece.name)
    if (checks.length > 0) bySet.set(key, { pieces: [piece.id], checks })
  }
  return [...bySet].filter(([key]) => !known.has(key)).map(([, proposal]) => proposal)
}

/** The checks of a proposal, one of each kind for each piece. */
export function checksOf({ pieces, checks }: CheckProposal): ProposedCheck[] {
  return pieces.flatMap((piece) => checks.map(({ kind, what }) => ({ piece, kind, what: [...what] })))
}

/** Off the machine, to go back as it is: no fresh part, which is compared and not checked. */
function isRetained(facts: PlanFacts, account: Account): boolean {
  const { piece, should } = account
  if (piece.kind === 'aid' || piece.kind === 'tool' || piece.singleUse || should === 0) return false
  return piece.replaces === undefined && owedAtHome(facts, account) > 0
}

function setOf({ piece, home }: Account): string {
  if (piece.kind === 'connection' && piece.set !== undefined) return [piece.set, piece.step].join('\n')
  return home.position === undefined ? piece.id : [piece.name, home.at, piece.step].join('\n')
}
