import { type Proposal, proposals } from '../plan/proposals.ts'
import type { Session } from './session.ts'

/** Steps of the way back that the record suggests, in the order in which `accept` counts them. */
export function proposedSteps({ state }: Session): Proposal[] {
  return proposals(state)
}
