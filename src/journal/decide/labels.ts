import { LAST_CONTAINER } from '../../label/code.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownLabel, refuse } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Numbers go to paper before there is a container: from now on they are dealt, whether they are used or not. */
export function dealLabels(state: State, { count }: Of<'deal-labels'>): EntryBodyOf<'labels-dealt'> {
  if (!Number.isInteger(count) || count < 1 || count > MOST_LABELS)
    refuse({ code: 'too-many-labels', count, most: MOST_LABELS })
  const from = firstFree(state, count)
  return { type: 'labels-dealt', from, to: from + count - 1 }
}

/** Of a run of labels those still unused are void from now on; those in use stay. */
export function voidLabels(
  state: State,
  { from, to, reason }: Of<'void-labels'>,
): EntryBodyOf<'labels-voided'> {
  const isAsked = (no: number) => no >= from && no <= to
  const labels = [...state.blanks]
    .filter(([no, { voided }]) => isAsked(no) && voided === null)
    .map(([no]) => no)
  if (labels.length === 0) refuse({ code: 'no-unused-labels', from, to })
  const inUse = [...state.containers.values()].filter(({ no, voided }) => isAsked(no) && voided === null)
  return { type: 'labels-voided', labels, inUse: inUse.length, reason: given(reason, 'reason') }
}

/** The first of so many numbers that follow each other and were never dealt, or a refusal. */
export function firstFree(state: State, count = 1): number {
  const left = Math.max(0, LAST_CONTAINER - state.dealt.container)
  if (left < count) refuse({ code: 'numbers-used-up', what: 'container', left })
  return state.dealt.container + 1
}

/** That number, if it is on an unused label that is not void, or a refusal. */
export function unusedLabel(state: State, no: number): number {
  if (!state.blanks.has(no) && !state.containers.has(no)) refuse({ code: 'no-such-label', container: no })
  return knownLabel(state, no) === null ? no : refuse({ code: 'label-in-use', container: no })
}

/** Of one run: forty sheets of the smallest stock, and no slip of the hand uses up the numbers of a job. */
const MOST_LABELS = 1000
