import type { EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { movesText, piecesText } from '../move-text.ts'
import { pieceName } from '../pieces.ts'
import { askedText, itemsText } from './asked-text.ts'
import { comparedText } from './compared-text.ts'
import { VERDICTS } from './names.ts'
import { checkNumbers, setNames } from './set-names.ts'

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
  'checks-set': (state, { checks }) => `to be checked: ${askedText(state, checks)}`,
  'checks-done': (state, { checks, says }) => {
    const pieces = checks.flatMap((id) => state.checks.get(id)?.piece ?? [])
    const names = setNames(state, pieces)
    return `checked and good: ${checkNumbers(checks)}${names === '' ? '' : `, ${names}`}${says ? `: ${says}` : ''}`
  },
  'check-dropped': (_, { check, reason }) => `check ${check} dropped, because ${reason}`,
  judged: (state, { of: pieces, along, verdict, reason, count, moves }) => {
    const some = count === undefined ? '' : `${count} of the `
    const with_ = along.length === 0 ? '' : `, and with it ${setNames(state, along)}`
    const gone = moves.length === 0 ? '' : `; ${movesText(state, moves)}`
    return `judged: ${some}${setNames(state, pieces)} ${VERDICTS[verdict]}${with_}, because ${reason}${gone}`
  },
  bound: (state, { of: pieces, reason }) =>
    `belong together: ${setNames(state, pieces)}${reason ? `, because ${reason}` : ''}`,
  compared: comparedText,
  'trigger-set': (state, { trigger: { id, when, items } }) =>
    `${id} set, when ${when}: ${itemsText(state, items)}`,
  'trigger-dropped': (_, { trigger, reason }) => `list ${trigger} dropped, because ${reason}`,
  'found-out': (state, { finding, checks, condemned }) => {
    const where = finding.piece === undefined ? '' : `, at ${pieceName(state, finding.piece)}`
    const replace = condemned.length === 0 ? [] : [`replace ${setNames(state, condemned)}`]
    const check = checks.length === 0 ? [] : [`check ${askedText(state, checks)}`]
    return [`found: ${finding.text}${where}`, ...replace, ...check].join('; ')
  },
  carrying: (state, { on, pieces, openings }) =>
    `on ${pieceName(state, on)}: ${piecesText(state, openings, pieces)}`,
}
