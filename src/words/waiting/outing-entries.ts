import type { EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { dayText } from '../days.ts'
import { joined } from '../grammar.ts'
import { movesText } from '../move-text.ts'
import { countedPieces, pieceName } from '../pieces.ts'
import { holderText } from './out-words.ts'

type OutingEntry = 'sent-out' | 'came-back'

/** One line of history for what went out of the house and came back. */
export const outingTellers: { [Type in OutingEntry]: (state: State, entry: EntryOf<Type>) => string } = {
  'sent-out': (state, { outing: { id, to, why, due, expects, job, pieces, aside } }) => {
    const names = countedPieces(state, pieces)
    const facts = [
      `${job === undefined ? 'out' : 'lent'} to ${to} (${id}): ${names}`,
      why ? `for ${why}` : '',
      due ? `due ${dayText(due, state.clock.today)}` : '',
      expects ? `expected: ${expects}` : '',
      aside.length > 0 ? `left here: ${joined(aside.map((piece) => pieceName(state, piece)))}` : '',
    ]
    return facts.filter(Boolean).join(', ')
  },
  'came-back': (state, { outing: id, pieces, moves, tookOut, result, opened }) => {
    const outing = state.outings.get(id)
    // What was taken out there, and came along loose, is told in the user's own words.
    const named = new Set(tookOut?.pieces)
    const back = moves.filter((move) => move.from === 'out' && !named.has(move.piece))
    const where = back.length > 0 ? movesText(state, back, { pieces, from: false }) : ''
    const taken = tookOut ? `taken out there: ${tookOut.text}` : ''
    const facts = [where === '' ? '' : `${where}${opened ? ' (new)' : ''}`, result ?? '', taken].filter(
      Boolean,
    )
    if (where === '') return `${outing ? holderText(outing) : `at ${id}`}: ${facts.join('; ')}`
    return `back from ${outing ? `${outing.to} (${id})` : id}: ${facts.join('; ')}`
  },
}
