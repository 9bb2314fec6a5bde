import type { State } from '../../journal/state.ts'
import type { OutingView } from '../../session/outing-view.ts'
import { say } from '../cures.ts'
import { joined } from '../grammar.ts'
import { countedPieces, pieceName } from '../pieces.ts'
import { awayPieces, outingStanding, overdueText } from './out-words.ts'
import { tookOutWords } from './took-out-words.ts'

/** What went out together, in a line, with what is asked of it below. */
export function outingRows(state: State, view: OutingView): string[] {
  const { outing, standing, riders } = view
  const { id, to, why, expects, aside, pieces } = outing
  if (standing === 'unanswered' || standing === 'back') {
    const names = countedPieces(state, pieces)
    const asked = `look what was taken out of it there: ${tookOutWords(id)}`
    return [`${id}  ${names}, back from ${to}`, ...(standing === 'unanswered' ? [`    ${asked}`] : [])]
  }
  const facts = [
    why === undefined ? '' : `for ${why}`,
    expects === undefined ? '' : `expected: ${expects}`,
    riders.length === 0 ? '' : `on it: ${countedPieces(state, riders)}`,
    aside.length === 0 ? '' : `left here: ${joined(aside.map((piece) => pieceName(state, piece)))}`,
  ].filter(Boolean)
  return [
    standing === 'overdue'
      ? overdueText(state, outing)
      : `${id}  ${awayPieces(state, outing)}, ${outingStanding(state, outing).replace(` (${id})`, '')}`,
    ...(facts.length > 0 ? [`    ${facts.join('; ')}`] : []),
    `    ${say(`came back ${id}`)} when it is here`,
  ]
}
