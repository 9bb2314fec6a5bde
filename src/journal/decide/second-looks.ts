import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownStep } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** One line of a critical step is seen again, by somebody else or by the same person later. */
export function seeAgain(state: State, { step, line, says }: Of<'see-again'>): EntryBodyOf<'seen-again'> {
  knownStep(state, step)
  return { type: 'seen-again', step, line, says: given(says, 'text') }
}
