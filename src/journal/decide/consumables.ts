import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownStep, refuse, unknown } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Something is put on in a step on the way back: asked there, with the times that its maker gives. */
export function setConsumable(
  state: State,
  { do: _, ...command }: Of<'set-consumable'>,
): EntryBodyOf<'consumable-set'> {
  const { built } = knownStep(state, command.step)
  if (built === 'done') refuse({ code: 'step-done', step: command.step })
  return {
    type: 'consumable-set',
    consumable: {
      ...command,
      id: `s${state.dealt.consumable + 1}`,
      name: given(command.name, 'name'),
      before: command.before ?? (command.cureMinutes === undefined ? [] : ['start']),
    },
  }
}

/** It is not put on after all. */
export function dropConsumable(
  state: State,
  { consumable, reason }: Of<'drop-consumable'>,
): EntryBodyOf<'consumable-dropped'> {
  if (!state.consumables.has(consumable)) unknown('consumable', consumable)
  return { type: 'consumable-dropped', consumable, reason: given(reason, 'reason') }
}

/** It is on: its times run from now. */
export function apply(state: State, { consumable: id }: Of<'apply'>): EntryBodyOf<'applied'> {
  const { step } = state.consumables.get(id) ?? unknown('consumable', id)
  return { type: 'applied', consumable: id, began: knownStep(state, step).built !== 'underway' }
}
