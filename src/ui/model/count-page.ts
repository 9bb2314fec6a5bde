import { groupedCode } from '../../label/code.ts'
import { codeOf } from '../../session/scan.ts'
import { liesIn } from '../../words/lookups.ts'
import { pieceName } from '../../words/pieces.ts'
import { containerName } from '../../words/places.ts'
import type { Told } from '../../words/told.ts'
import type { Screen } from '../navigation.ts'
import { type Choice, NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { line, strong } from '../text/line.ts'
import { inLarge } from './large-words.ts'
import { groups, headed, indented } from './rows.ts'
import type { PieceId, Scene } from './scene.ts'

type Count = Extract<Screen, { at: 'count' }>

/**
 * A blind count: one piece after the other is asked for, and what the record expects is not shown before all are
 * given. Leaving it breaks it off; then it starts at nothing.
 */
export function countPage({ session, width }: Scene, screen: Count): Page {
  const { state } = session
  const { container, given } = screen
  const asked = piecesIn(state, container)
  const next = asked[given.length]
  const question = next === undefined ? 'anything else in it' : pieceName(state, next)
  return {
    title: line(
      strong(`COUNT ${containerName(state, container)}`),
      `  label ${groupedCode(codeOf(state, container))}`,
    ),
    top: [],
    rows: rowsOf(
      groups(
        indented('Empty it out and count. What the record expects stays hidden until the end.', width),
        headed(
          'COUNTED',
          given.flatMap((number, index) => indented(`${number}  ${countedName(state, asked[index])}`, width)),
        ),
        headed(
          `${given.length + 1} OF ${asked.length + 1}: HOW MANY`,
          indented(line(strong(question)), width),
        ),
        indented(
          next === undefined
            ? 'Type how many pieces are left that were not asked for; 0 for none.'
            : 'Type the number; 0 for none.',
          width,
        ),
      ),
    ),
    enter: {
      says: 'nothing: a count needs its number',
      act: { do: 'say', what: 'Count, then type the number.', cure: BREAKING_OFF },
    },
    // One slip of the finger is mended, and does not cost the whole count.
    keys:
      given.length === 0 ? undefined : { back: { do: 'turn', to: { ...screen, given: given.slice(0, -1) } } },
    choice: NO_CHOICES,
    question: { take: (text) => taken(screen, asked, text) },
    large: inLarge(`${given.length + 1}/${asked.length + 1}`, [question, 'how many']),
  }
}

const BREAKING_OFF = 'Backspace takes the last number back; before the first it breaks the count off.'

/** The pieces to be counted, in a settled order. */
function piecesIn(state: Scene['session']['state'], container: number): PieceId[] {
  return [...new Set(liesIn(state, container).map(({ piece }) => piece))]
}

function countedName(state: Scene['session']['state'], piece: PieceId | undefined): string {
  return piece === undefined ? '' : pieceName(state, piece)
}

function taken(screen: Count, asked: readonly PieceId[], text: string): Choice | { cannot: Told } {
  const number = /^\d{1,4}$/.test(text.trim()) ? Number(text) : null
  if (number === null)
    return { cannot: { what: 'A count is a whole number: 0, 7, 12.', lines: [], cure: BREAKING_OFF } }
  const given = [...screen.given, number]
  if (given.length <= asked.length)
    return { says: `count ${number}`, act: { do: 'turn', to: { ...screen, given } } }
  const counts: { piece: PieceId | null; counted: number }[] = asked.map((piece, index) => ({
    piece,
    counted: given[index] ?? 0,
  }))
  if (number > 0 || asked.length === 0) counts.push({ piece: null, counted: number })
  return {
    says: `count ${number}, and compare`,
    act: {
      do: 'send',
      commands: [{ do: 'count', container: screen.container, counts }],
      to: { at: 'differences', container: screen.container },
      // Back from there is where the count was begun.
      isTurn: true,
    },
  }
}
