import type { StepContents } from './contents.ts'
import type { PlanFacts } from './facts.ts'
import type { ConsumableFacts, CureTarget } from './waiting-facts.ts'
import type { WaitingReason } from './waiting-reasons.ts'

/** What is still to be put on in a step, and what was put together too late after it was. */
export function consumableReasons(facts: PlanFacts, { consumables }: StepContents): WaitingReason[] {
  return consumables.flatMap((consumable): WaitingReason[] => {
    const { id } = consumable
    if (facts.overrides.has(id)) return []
    if (consumable.applied === null) return [{ code: 'consumable-due', consumable: id }]
    const late = minutesLate(facts, consumable)
    return late > 0 ? [{ code: 'worked-late', consumable: id, late }] : []
  })
}

/** What still sets and holds up a step, a filling or the first start. */
export function curing(facts: PlanFacts, target: CureTarget): WaitingReason[] {
  return [...facts.consumables.values()].flatMap((consumable): WaitingReason[] => {
    if (!consumable.before.includes(target) || facts.overrides.has(consumable.id)) return []
    const until = curedAt(facts, consumable)
    return until !== null && facts.clock.at < until
      ? [{ code: 'curing', consumable: consumable.id, until }]
      : []
  })
}

/** When it has set, in ISO 8601; null before it was put on, and where no time was given. It counts from the last piece fitted. */
export function curedAt(facts: PlanFacts, { step, applied, cureMinutes }: ConsumableFacts): string | null {
  if (applied === null || cureMinutes === undefined) return null
  const fittedAt = facts.steps.get(step)?.work?.fittedAt ?? null
  return later(fittedAt !== null && fittedAt > applied.at ? fittedAt : applied.at, cureMinutes)
}

/** The time until which the joint may be put together, in ISO 8601; null where there is none. */
export function workUntil({ applied, workMinutes }: ConsumableFacts): string | null {
  return applied === null || workMinutes === undefined ? null : later(applied.at, workMinutes)
}

/** By how many minutes, begun ones too, the last piece was fitted too late. */
function minutesLate(facts: PlanFacts, consumable: ConsumableFacts): number {
  const until = workUntil(consumable)
  const fittedAt = facts.steps.get(consumable.step)?.work?.fittedAt ?? null
  if (until === null || fittedAt === null) return 0
  return Math.max(0, Math.ceil((Date.parse(fittedAt) - Date.parse(until)) / 60_000))
}

function later(at: string, minutes: number): string {
  return new Date(Date.parse(at) + minutes * 60_000).toISOString()
}
