import {
  type CheckProposal,
  checkProposals,
  checksOf as checksOfProposal,
  type ProposedCheck,
} from '../plan/judging/check-proposals.ts'
import { type Proposal, proposals } from '../plan/proposals.ts'
import type { Session } from './session.ts'

/** Steps of the way back that the record suggests, in the order in which `accept` counts them. */
export function proposedSteps({ state }: Session): Proposal[] {
  return proposals(state)
}

/** Checks that the kind of thing suggests, in the order in which `accept` counts them on, after the steps. */
export function proposedChecks({ state }: Session): CheckProposal[] {
  return checkProposals(state)
}

/** What `accept` asks for: a check of each kind for each piece. */
export function checksOf(proposal: CheckProposal): ProposedCheck[] {
  return checksOfProposal(proposal)
}
