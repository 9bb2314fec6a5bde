import type { EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { joined } from '../grammar.ts'
import { movesText, piecesText } from '../move-text.ts'
import { pieceName } from '../pieces.ts'
import { checkWords, VERDICTS } from './names.ts'

type JudgingEntry =
  | 'checks-set'
  | 'checks-done'
  | 'check-dropped'
  | 'judged'
  | 'bound'
  | 'compared'
  | 'trigger-set'
  | 'trigger-dropped'
  | 'found-out'
  | 'carrying'

/** One line of history for what was asked of pieces and decided about them. */
export const judgingTellers: { [Type in JudgingEntry]: (state: State, entry: EntryOf<Type>) => string } = {
  'checks-set': (state, { checks }) =>
    `to be checked: ${checks.map((check) => `${pieceName(state, check.piece)}, ${checkWords(check)} (${check.id})`).join('; ')}`,
  'checks-done': (state, { checks, says }) => {
    const pieces = checks.flatMap((id) => state.checks.get(id)?.piece ?? [])
    const names = [...new Set(pieces)].map((piece) => pieceName(state, piece))
    return `checked and good: ${joined(checks)}${names.length > 0 ? `, ${joined(names)}` : ''}${says ? `: ${says}` : ''}`
  },
  'check-dropped': (_, { check, reason }) => `check ${check} dropped, because ${reason}`,
  judged: (state, { of: pieces, along, verdict, reason, count, moves }) => {
    const names = pieces.map((piece) => pieceName(state, piece))
    const some = count === undefined ? '' : `${count} of the `
    const with_ =
      along.length === 0 ? '' : `, and with it ${joined(along.map((piece) => pieceName(state, piece)))}`
    const gone = moves.length === 0 ? '' : `; ${movesText(state, moves)}`
    return `judged: ${some}${joined(names)} ${VERDICTS[verdict]}${with_}, because ${reason}${gone}`
  },
  bound: (state, { of: pieces, reason }) =>
    `belong together: ${joined(pieces.map((piece) => pieceName(state, piece)))}${reason ? `, because ${reason}` : ''}`,
  compared: (state, { piece, features, verdict, moves }) => {
    const said = features.map(
      ({ feature, how, says }) => `${feature} ${LIKENESS[how]}${says ? ` (${says})` : ''}`,
    )
    const left = moves.length === 0 ? '' : `; ${movesText(state, moves)}`
    return `compared: ${pieceName(state, piece)} with the old one${said.length > 0 ? `: ${said.join(', ')}` : ''}${COMPARED[verdict]}${left}`
  },
  'trigger-set': (state, { trigger: { id, when, items } }) =>
    `${id} set, when ${when}: ${items
      .map((item) =>
        item.do === 'replace'
          ? `replace ${pieceName(state, item.piece)}`
          : `${pieceName(state, item.piece)}, ${checkWords(item)}`,
      )
      .join('; ')}`,
  'trigger-dropped': (_, { trigger, reason }) => `list ${trigger} dropped, because ${reason}`,
  'found-out': (state, { finding, checks, condemned }) => {
    const opened = [
      ...condemned.map((piece) => `replace ${pieceName(state, piece)}`),
      ...checks.map((check) => `${pieceName(state, check.piece)}, ${checkWords(check)} (${check.id})`),
    ]
    return `found: ${finding.text}${opened.length > 0 ? `; ${opened.join('; ')}` : ''}`
  },
  carrying: (state, { on, pieces, openings }) =>
    `on ${pieceName(state, on)}: ${piecesText(state, openings, pieces)}`,
}

const LIKENESS = { alike: 'alike', differs: 'different but right', wrong: 'wrong' }
const COMPARED = { due: ', not done yet', right: ', it is the right one', wrong: ', it is the wrong one' }
