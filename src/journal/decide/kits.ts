import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, refuse } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** A kit is counted in: what is owed goes to its homes, the rest is declared spare. */
export function countIn(state: State, { name, lines }: Of<'count-in'>): EntryBodyOf<'supplied'> {
  given(name, 'name')
  if (lines.length === 0 || state.closed) refuse({ code: 'text-missing', what: 'text' })
  return { type: 'supplied', pieces: [], openings: [], moves: [], retired: [] }
}
