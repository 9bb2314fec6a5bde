import { Gates } from '../../plan/gates.ts'
import { beneath, buildNeeds } from '../../plan/order.ts'
import { isDried, isOverdue, minutesLate } from '../../plan/waiting/consumables.ts'
import type { ConsumableFacts, ConsumableId, CureTarget } from '../../plan/waiting/waiting-facts.ts'
import { daysBetween } from '../../trade/calendar/days-between.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownStep, refuse, unknown } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

const MOST_MINUTES = 1e6

/** Something is put on in a step on the way back: asked there, with the times that its maker gives. */
export function setConsumable(
  state: State,
  { do: _, ...command }: Of<'set-consumable'>,
): EntryBodyOf<'consumable-set'> {
  const { step, workMinutes, cureMinutes, expires } = command
  if (knownStep(state, step).built === 'done') refuse({ code: 'step-done', step })
  const name = given(command.name, 'name')
  for (const minutes of [workMinutes, cureMinutes]) {
    if (minutes !== undefined && !(minutes > 0 && minutes <= MOST_MINUTES))
      refuse({ code: 'count-wrong', count: minutes })
  }
  refuseExpired(state, { name, expires })
  const before = [...new Set(command.before ?? (cureMinutes === undefined ? [] : ['start' as const]))]
  for (const target of before) refuseTarget(state, step, target)
  return {
    type: 'consumable-set',
    consumable: { ...command, id: `s${state.dealt.consumable + 1}`, name, before },
  }
}

/** It is not put on after all. What is on already is passed over by name instead. */
export function dropConsumable(
  state: State,
  { consumable: id, reason }: Of<'drop-consumable'>,
): EntryBodyOf<'consumable-dropped'> {
  const { applied } = state.consumables.get(id) ?? unknown('consumable', id)
  if (applied !== null) refuse({ code: 'put-on-already', consumable: id, isLate: false })
  return { type: 'consumable-dropped', consumable: id, reason: given(reason, 'reason') }
}

/** It is on: its times run from now. The step is taken up with it. */
export function apply(state: State, { consumable: id }: Of<'apply'>): EntryBodyOf<'applied'> {
  const consumable = state.consumables.get(id) ?? unknown('consumable', id)
  const { step: no, applied } = consumable
  const step = knownStep(state, no)
  if (step.built === 'done') refuse({ code: 'step-done', step: no })
  if (applied !== null && !isDried(state, consumable))
    refuse({ code: 'put-on-already', consumable: id, isLate: isLate(state, consumable) })
  refuseExpired(state, consumable)
  const began = step.built !== 'underway'
  const reasons = began ? new Gates(state).start(no) : []
  if (reasons.length > 0) refuse({ code: 'step-blocked', step: no, gate: 'start', reasons })
  return { type: 'applied', consumable: id, began }
}

function isLate(state: State, consumable: ConsumableFacts): boolean {
  return isOverdue(state, consumable) || minutesLate(state, consumable) > 0
}

function refuseExpired(
  { clock }: State,
  { id = null, name, expires }: { id?: ConsumableId | null; name: string; expires?: string | undefined },
): void {
  if (expires === undefined || clock.today === '' || expires >= clock.today) return
  refuse({ code: 'out-of-date', consumable: id, name, expires, days: daysBetween(expires, clock.today) })
}

/** What sets in a step can hold up neither that step nor what lies beneath it: each would wait for the other. */
function refuseTarget(state: State, step: number, target: CureTarget): void {
  if (target === 'start') {
    if (state.started) refuse({ code: 'already', what: 'started', id: '' })
    return
  }
  const lower = beneath(buildNeeds(state.steps), step)
  if (typeof target === 'number') {
    if (knownStep(state, target).built === 'done') refuse({ code: 'step-done', step: target })
    if (target === step || lower.has(target)) refuse({ code: 'cycle', steps: [...new Set([step, target])] })
    return
  }
  const fluid = state.fluids.get(target) ?? unknown('fluid', target)
  if (fluid.filledLitres !== null) refuse({ code: 'already', what: 'filled', id: target })
  if (lower.has(fluid.step)) refuse({ code: 'cycle', steps: [step, fluid.step] })
}
