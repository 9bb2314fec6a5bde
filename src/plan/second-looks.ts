import { balance } from '../ledger/ledger.ts'
import type { StepContents } from './contents.ts'
import type { PlanFacts } from './facts.ts'
import type { SecondLine } from './waiting-facts.ts'
import type { WaitingReason } from './waiting-reasons.ts'

/** What of a critical step is still to be seen a second time before anything rests on it. Empty while it is not done. */
export function secondReasons(facts: PlanFacts, no: number, contents: StepContents): WaitingReason[] {
  const step = facts.steps.get(no)
  if (!step?.critical || step.built !== 'done' || facts.overrides.has(`check ${no}`)) return []
  const seen = new Set(facts.secondLooks.get(no)?.map(({ line }) => line))
  return secondLines(facts, contents)
    .filter((line) => !seen.has(line))
    .map((line) => ({ code: 'second-due', step: no, line }))
}

/** The lines of a step that are seen one by one: its pieces on the machine, its marks, tightenings and what was put on. */
export function secondLines(facts: PlanFacts, contents: StepContents): SecondLine[] {
  return [
    ...contents.pieces.map(({ piece }) => piece.id).filter((id) => balance(facts.ledger, id, 'machine') > 0),
    ...contents.marks.map(({ id }) => id),
    ...contents.tightenings.map(({ id }) => id),
    ...contents.consumables.map(({ id }) => id),
  ]
}
