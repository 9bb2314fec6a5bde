import type { EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { consumableTellers } from '../consumables/entry-words.ts'
import { joined } from '../grammar.ts'
import { movesText } from '../move-text.ts'
import { stepName } from '../names.ts'
import { countedPiece, pieceName } from '../pieces.ts'
import { outingName, secondLineName } from './names.ts'
import { orderTellers } from './order-entries.ts'

type WaitingEntry =
  | 'order-lined'
  | 'order-changed'
  | 'order-returned'
  | 'part-noted'
  | 'sent-out'
  | 'came-back'
  | 'consumable-set'
  | 'consumable-dropped'
  | 'applied'
  | 'seen-again'

/** One line of history for orders, what is out of the house, what is put on and what is seen twice. */
export const waitingTellers: { [Type in WaitingEntry]: (state: State, entry: EntryOf<Type>) => string } = {
  ...orderTellers,

  'sent-out': (state, { outing: { id, to, why, due, expects, pieces, aside } }) => {
    const facts = [
      `out to ${to} (${id}): ${joined(pieces.map(({ piece, count }) => countedPiece(state, piece, count)))}`,
      why ? `for ${why}` : '',
      due ? `due ${due}` : '',
      expects ? `expected: ${expects}` : '',
      aside.length > 0 ? `taken off before: ${joined(aside.map((piece) => pieceName(state, piece)))}` : '',
    ]
    return facts.filter(Boolean).join(', ')
  },
  'came-back': (state, { outing, pieces, moves, tookOut, result }) => {
    const back = moves.filter(({ from }) => from === 'out')
    const facts = [
      back.length > 0 ? movesText(state, back, { pieces }) : '',
      tookOut ? `taken out there: ${tookOut.text}` : '',
      result ?? '',
    ]
    return `back of ${outingName(state, outing)}: ${facts.filter(Boolean).join('; ') || 'nothing'}`
  },

  ...consumableTellers,

  'seen-again': (state, { step, line, says }) =>
    `seen again, ${stepName(state, step)}: ${secondLineName(state, line)}: ${says}`,
}
