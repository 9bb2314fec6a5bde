import { balance } from '../../ledger/ledger.ts'
import type { StepContents } from '../contents.ts'
import type { Clock, PlanFacts, StepFacts } from '../facts.ts'
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

/** The step that a line is of; undefined where there is no such line. */
export function stepOfLine(facts: PlanFacts, line: SecondLine): number | undefined {
  const { ledger, marks, tightenings, consumables } = facts
  return (
    ledger.accounts.get(line as `p${number}`)?.piece.step ??
    marks.get(line as `m${number}`)?.step ??
    tightenings.get(line as `t${number}`)?.step ??
    consumables.get(line as `s${number}`)?.step
  )
}

/**
 * How many minutes a person has still to wait before a second look at a critical step, from the last work done in it. 0 for
 * one who is named and did none of it. Nobody can tell who has no name from the one who did the work.
 */
export function minutesToWait({ critical, work }: StepFacts, { at, by = '' }: Clock): number {
  if (!critical || !work) return 0
  const same = (one: string, other: string) => one.trim().toLowerCase() === other.trim().toLowerCase()
  if (by.trim() !== '' && !work.by.some((worker) => same(worker, by))) return 0
  const passed = (Date.parse(at) - Date.parse(work.at)) / 60_000
  return Math.max(0, Math.ceil(critical.afterMinutes - passed))
}
