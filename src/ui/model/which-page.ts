import { liesAt } from '../../words/lookups.ts'
import { pieceName } from '../../words/pieces.ts'
import { whereName } from '../../words/places.ts'
import type { Screen } from '../navigation.ts'
import { type Choice, choicesOf, type Page, rowsOf } from '../page.ts'
import { line, strong } from '../text/line.ts'
import { numbered } from './rows.ts'
import type { PieceId, Scene } from './scene.ts'

/** Several pieces answer to the words of a line: one is chosen, and the line goes on with it. */
export function whichPage(
  { session, width }: Scene,
  { words, pieces, lines }: Extract<Screen, { at: 'which' }>,
): Page {
  const { state } = session
  const choices = new Map<number, Choice>()
  const rows = pieces.slice(0, 99).flatMap((id, index) => {
    const piece = id as PieceId
    const where = liesAt(state, piece)
      .map(({ place, count }) => `${count} ${whereName(state, place)}`)
      .join(', ')
    const says = `${pieceName(state, piece)}: ${where}`
    choices.set(index + 1, { says, act: { do: 'lines', lines: [lines[index] ?? ''] } })
    return numbered(index + 1, line(strong(pieceName(state, piece)), `  ${where}`), width)
  })
  return {
    title: line(strong('WHICH ONE?'), `  "${words}" may be ${pieces.length} pieces`),
    top: [],
    rows: rowsOf(rows),
    enter: { says: 'none of them: back', act: { do: 'back' } },
    choice: choicesOf(choices),
    large: null,
  }
}
