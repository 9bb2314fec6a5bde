import { owedAtHome, type StepContents } from '../contents.ts'
import type { FluidId, PlanFacts, StepFacts } from '../facts.ts'
import { beneath, buildNeeds } from '../order.ts'
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

/** What is put on keeps a step or a filling waiting: until it is on, until its joint is together, until it has set. */
export type CureReason = WaitingReason | { code: 'step-before'; step: number; built: StepFacts['built'] }

/** What still sets and holds up a step, a filling or the first start. */
export function curing(facts: PlanFacts, target: 'start'): WaitingReason[]
export function curing(facts: PlanFacts, target: CureTarget): CureReason[]
export function curing(facts: PlanFacts, target: CureTarget): CureReason[] {
  return [...facts.consumables.values()].flatMap((consumable): CureReason[] => {
    if (!consumable.before.includes(target) || facts.overrides.has(consumable.id)) return []
    return [...notTogether(facts, consumable, target), ...settingYet(facts, consumable, target)]
  })
}

function settingYet(facts: PlanFacts, consumable: ConsumableFacts, target: CureTarget): WaitingReason[] {
  const late = minutesLate(facts, consumable)
  // It will never hold, however long it sets. What is late stands before the first start in any case.
  if (late > 0) return target === 'start' ? [] : [{ code: 'worked-late', consumable: consumable.id, late }]
  const until = curedAt(facts, consumable)
  return until !== null && facts.clock.at < until
    ? [{ code: 'curing', consumable: consumable.id, until }]
    : []
}

/**
 * Where the order of the way back does not say already that the joint comes first. One that lies on top of what it
 * should hold up, as after a change of the order, holds up nothing: each would wait for the other.
 */
function notTogether(
  facts: PlanFacts,
  { id, step, applied }: ConsumableFacts,
  target: CureTarget,
): CureReason[] {
  const upper = typeof target === 'number' ? target : target === 'start' ? null : fluidStep(facts, target)
  // Open steps and what is not put on stand before the first start in any case.
  if (upper === null) return []
  if (upper !== step) {
    const needs = buildNeeds(facts.steps)
    if (beneath(needs, upper).has(step) || beneath(needs, step).has(upper)) return []
  }
  if (applied === null) return [{ code: 'consumable-due', consumable: id }]
  const built = facts.steps.get(step)?.built ?? 'done'
  return upper === step || built === 'done' ? [] : [{ code: 'step-before', step, built }]
}

function fluidStep(facts: PlanFacts, fluid: FluidId): number | null {
  return facts.fluids.get(fluid)?.step ?? null
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

/** By how many minutes, begun ones too, the last piece was fitted too late after it was put on; 0 where it was not. */
export function minutesLate(facts: PlanFacts, consumable: ConsumableFacts): number {
  const until = workUntil(consumable)
  const fittedAt = facts.steps.get(consumable.step)?.work?.fittedAt ?? null
  if (until === null || fittedAt === null) return 0
  return Math.max(0, Math.ceil((Date.parse(fittedAt) - Date.parse(until)) / 60_000))
}

/** It dried before anything was fitted on it: it may be cleaned off and put on anew, for nothing has to come apart. */
export function isDried(facts: PlanFacts, consumable: ConsumableFacts): boolean {
  return isOverdue(facts, consumable) && !isFittedOn(facts, consumable)
}

/** Whether its working time has run out while pieces of its step are still to be fitted. */
export function isOverdue(facts: PlanFacts, consumable: ConsumableFacts): boolean {
  const until = workUntil(consumable)
  return until !== null && facts.clock.at >= until && isApart(facts, consumable)
}

/** Whether pieces of its step are still to be fitted. */
export function isApart(facts: PlanFacts, { step }: ConsumableFacts): boolean {
  return [...facts.ledger.accounts.values()].some(
    (account) => account.piece.step === step && account.should > 0 && owedAtHome(facts, account) > 0,
  )
}

/** Whether a piece was fitted in its step after it was put on. */
function isFittedOn(facts: PlanFacts, { step, applied }: ConsumableFacts): boolean {
  const fittedAt = facts.steps.get(step)?.work?.fittedAt ?? null
  return applied !== null && fittedAt !== null && fittedAt > applied.at
}

function later(at: string, minutes: number): string {
  return new Date(Date.parse(at) + minutes * 60_000).toISOString()
}
