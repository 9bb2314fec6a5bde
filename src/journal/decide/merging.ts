import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, refuse, unknown } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** What was taken over from a copy of the job stands already; what of it was left out gets numbers to be settled by. */
export function noteMerge(
  state: State,
  { do: _, leftOut, ...facts }: Of<'note-merge'>,
): EntryBodyOf<'merged'> {
  const first = state.dealt.leftOut + 1
  return {
    type: 'merged',
    ...facts,
    leftOut: leftOut.map((each, index) => ({ id: `w${first + index}`, ...each })),
  }
}

/** What a copy said and this record does not is answered for. */
export function settleLeftOut(
  state: State,
  { leftOut, how }: Of<'settle-left-out'>,
): EntryBodyOf<'left-out-settled'> {
  const known = state.leftOut.get(leftOut) ?? unknown('left-out', leftOut)
  if (known.settled !== null) refuse({ code: 'already', what: 'settled', id: leftOut })
  return { type: 'left-out-settled', leftOut, how: given(how, 'reason') }
}
