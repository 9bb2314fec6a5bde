import type { EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { counted, joined } from '../grammar.ts'

type MergingEntry = 'merged' | 'left-out-settled'

/** One line of history for what was brought together with a copy of the job. */
export const mergingTellers: { [Type in MergingEntry]: (state: State, entry: EntryOf<Type>) => string } = {
  merged: (_, { copy, kept, taken, leftOut, renumbered }) => {
    const bags = renumbered.map(({ there, here }) => `${there} there is ${here} here`)
    const facts = [
      `${counted(taken, 'entry', 'entries')} taken over`,
      leftOut.length === 0 ? '' : `left out: ${joined(leftOut.map(({ id }) => id))}`,
      bags.length === 0 ? '' : `numbers: ${joined(bags)}`,
      kept === undefined ? '' : `its journal is kept as ${kept}`,
    ]
    return `merged with the copy ${copy}: ${facts.filter(Boolean).join('; ')}`
  },
  'left-out-settled': (state, { leftOut, how }) => {
    const says = state.leftOut.get(leftOut)?.says
    return `${leftOut} settled${says ? `, which said ${says}` : ''}: ${how}`
  },
}
