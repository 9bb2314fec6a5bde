import { contentsByStep } from '../../plan/contents.ts'
import { minutesToWait, secondLines, stepOfLine } from '../../plan/waiting/second-looks.ts'
import type { SecondLine } from '../../plan/waiting/waiting-facts.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { UnknownThing } from '../refusal.ts'
import type { State } from '../state.ts'
import { given, knownStep, refuse, unknown } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** One line of a critical step is seen again, by somebody else or by the same person later. */
export function seeAgain(
  state: State,
  { step: named, line, says }: Of<'see-again'>,
): EntryBodyOf<'seen-again'> {
  const no = named ?? stepOfLine(state, line) ?? unknown(thingOf(line), line)
  const step = knownStep(state, no)
  if (!step.critical) refuse({ code: 'not-critical', step: no })
  if (step.built !== 'done') refuse({ code: 'second-before-done', step: no, built: step.built })
  const contents = contentsByStep(state).get(no)
  const known = contents ? secondLines(state, contents) : []
  if (!known.includes(line)) refuse({ code: 'not-a-second-line', step: no, line, known })
  const words = given(says, 'text')
  const waitMinutes = minutesToWait(step, state.clock)
  if (waitMinutes > 0) {
    const { afterMinutes } = step.critical
    const by = state.clock.by?.trim() ?? ''
    refuse({ code: 'second-too-soon', step: no, line, by, afterMinutes, waitMinutes })
  }
  return { type: 'seen-again', step: no, line, says: words }
}

function thingOf(line: SecondLine): UnknownThing {
  if (line.startsWith('m')) return 'mark'
  if (line.startsWith('t')) return 'tightening'
  return line.startsWith('s') ? 'consumable' : 'piece'
}
