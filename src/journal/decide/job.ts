import { Gates } from '../../plan/gates.ts'
import { leftovers } from '../../plan/leftovers.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, refuse } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** The first entry of every journal. */
export function openJob(state: State, command: Of<'open-job'>): EntryBodyOf<'opened'> {
  const { no, name, machine, units, practice } = command
  if (state.job.no !== 0) refuse({ code: 'job-open-already' })
  if (!(Number.isInteger(no) && no >= 1 && no <= 999)) refuse({ code: 'count-wrong', count: no })
  return { type: 'opened', job: { no, name: given(name, 'name'), machine: machine.trim(), units, practice } }
}

/** The job gets another name, description or units. */
export function describe(_state: State, { name, machine, units }: Of<'describe'>): EntryBodyOf<'described'> {
  return { type: 'described', name: name === undefined ? undefined : given(name, 'name'), machine, units }
}

/** The job is put away, or taken out again; its record stays as it is. */
export function archive(state: State, { archived }: Of<'archive'>): EntryBodyOf<'archived'> {
  if (state.job.archived === archived) refuse({ code: 'already', what: 'archived', id: state.job.name })
  return { type: 'archived', archived }
}

/** Work stops: the card that the next start opens on. */
export function stop(state: State, { note, abrupt }: Of<'stop'>): EntryBodyOf<'stopped'> {
  return { type: 'stopped', step: state.build ?? state.strip, note: note.trim(), abrupt }
}

/** The last gate: cleared only on an empty trial balance. */
export function clear(state: State): EntryBodyOf<'cleared'> {
  if (state.cleared) refuse({ code: 'already', what: 'cleared', id: state.job.name })
  // An empty balance over an empty record says nothing about the machine.
  if (state.ledger.accounts.size === 0 && state.steps.size === 0) refuse({ code: 'nothing-recorded' })
  const found = leftovers(new Gates(state))
  if (found.length > 0) refuse({ code: 'not-clear', leftovers: found })
  return { type: 'cleared' }
}

/** The machine was started: only after its clearance. */
export function firstStart(state: State): EntryBodyOf<'started'> {
  if (state.started) refuse({ code: 'already', what: 'started', id: state.job.name })
  if (!state.cleared) refuse({ code: 'not-cleared' })
  return { type: 'started' }
}

/** A job closes when its checks after the start are done, or handed over in words, and nothing is off the machine. */
export function closeJob(state: State, { note }: Of<'close-job'>): EntryBodyOf<'closed'> {
  if (!state.started) refuse({ code: 'not-started' })
  const open = [...state.steps.values()]
    .filter(
      (step) =>
        step.way === 'after-start' && step.built !== 'done' && !state.overrides.has(`check ${step.no}`),
    )
    .map((step) => step.no)
  if (open.length > 0 && !note?.trim()) refuse({ code: 'checks-open', steps: open })
  // What came off again after the start is not handed over in words.
  const found = leftovers(new Gates(state))
  if (found.length > 0) refuse({ code: 'not-clear', leftovers: found })
  return { type: 'closed', note: note?.trim() || undefined }
}

/** Takes back the last entry in force. The opening of the job is never taken back. */
export function undo(state: State, { entry }: Of<'undo'>): EntryBodyOf<'undone'> {
  const last = state.inForce.at(-1)
  if (last === undefined || state.inForce.length < 2) refuse({ code: 'nothing-to-undo' })
  if (entry !== undefined && entry !== last) refuse({ code: 'written-since', entry, last })
  // What it took over would be left behind, and bags were numbered anew by it.
  if (state.merge === last) refuse({ code: 'merge-stays', entry: last })
  // A doubt about a bolt goes by an answer, never by forgetting what raised it.
  const doubted = [...state.tightenings.values()].find(({ suspect }) => suspect)
  if (state.card?.n === last && doubted?.suspect) {
    refuse({ code: 'angle-suspect', tightening: doubted.id, fastener: doubted.suspect.fastener })
  }
  return { type: 'undone', entry: last }
}

/** Takes back the last undo. */
export function redo(state: State): EntryBodyOf<'redone'> {
  const last = state.undone.at(-1)
  if (last === undefined) refuse({ code: 'nothing-to-redo' })
  return { type: 'redone', entry: last }
}
