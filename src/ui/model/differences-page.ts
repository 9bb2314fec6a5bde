import { overOrShort } from '../../words/names.ts'
import { pieceName } from '../../words/pieces.ts'
import { containerName, containerPlace } from '../../words/places.ts'
import { type Suspect, suspectsOf, suspectText } from '../../words/suspects.ts'
import type { Command } from '../act.ts'
import { BACK, type Choice, choicesOf, type Page, rowsOf } from '../page.ts'
import { chip, SIGNS } from '../signs.ts'
import { type Line, line, strong } from '../text/line.ts'
import { inLarge } from './large-words.ts'
import { groups, headed, indented, numbered } from './rows.ts'
import type { Entry, Scene, State } from './scene.ts'

type Counted = Extract<Entry, { type: 'counted' }>

/** What a count came to: the arithmetic of each piece, and the ways to explain what does not agree. */
export function differencesPage({ session, width }: Scene, container: number): Page {
  const { state } = session
  const last = session
    .entries()
    .findLast((entry): entry is Counted => entry.type === 'counted' && entry.container === container)
  const open = [...state.differences.values()].filter(
    (difference) => difference.container === container && difference.settled === null,
  )
  const choices = new Map<number, Choice>()
  const explain = open.flatMap((difference) => {
    const { id, piece, expected, counted } = difference
    const name = piece === null ? 'pieces the record does not have there' : pieceName(state, piece)
    const ways = [...knownAgain(state, difference), ...waysToExplain(difference)].slice(0, MOST_WAYS)
    return [
      ...indented(line(strong(`${id}  ${overOrShort(expected, counted)}`), `  ${name}`), width),
      ...ways.flatMap((way) => {
        const no = choices.size + 1
        choices.set(no, way)
        return numbered(no, way.says, width)
      }),
    ]
  })
  choices.set(9, { says: 'count again', act: { do: 'turn', to: { at: 'count', container, given: [] } } })
  const agreed = (last?.lines ?? []).every(({ expected, counted }) => expected === counted)
  const sign = open.length > 0 ? SIGNS.differs : agreed ? SIGNS.agrees : SIGNS.explained
  return {
    title: line(strong(`COUNTED ${containerName(state, container)}`), '  ', chip(sign)),
    top: [],
    rows: rowsOf(
      groups(
        headed(
          'THE ARITHMETIC',
          (last?.lines ?? []).flatMap((each) => indented(arithmetic(state, each), width)),
        ),
        headed('EXPLAIN IT', explain),
        headed('OR', numbered(9, 'count again', width)),
      ),
    ),
    enter: open.length === 0 ? BACK : { says: 'back, to be explained later', act: { do: 'back' } },
    choice: choicesOf(choices),
    large: inLarge(lettersOf(open) ?? sign.word, [[chip(sign)], containerName(state, container)]),
  }
}

function arithmetic(state: State, { piece, expected, counted }: Counted['lines'][number]): Line {
  const name = piece === null ? 'pieces the record does not have there' : pieceName(state, piece)
  const verdict = expected === counted ? 'agrees' : overOrShort(expected, counted)
  return line(`${expected} in the record, ${counted} counted: `, strong(verdict), `  ${name}`)
}

/** How far one count is off, or how many are. */
function lettersOf(open: readonly Difference[]): string | undefined {
  const [first, ...more] = open
  if (!first) return undefined
  return more.length === 0 ? overOrShort(first.expected, first.counted) : `${open.length} DIFFER`
}

type Difference = State['differences'] extends Map<unknown, infer Value> ? Value : never

/** Two ways to write stay in reach below the pieces that it may be; 9 counts again. */
const MOST_WAYS = 8

/** What is too many may be a piece that lay in here once: named by number, the count is the reason. */
function knownAgain(state: State, difference: Difference): Choice[] {
  const over = difference.counted - difference.expected
  return suspectsOf(state, difference)
    .slice(0, MOST_WAYS - 2)
    .map((suspect) => ({
      says: `it is ${suspectText(state, suspect, over)}`,
      act: {
        do: 'send',
        commands: [
          {
            do: 'explain',
            difference: difference.id,
            how: { kind: 'moved', piece: suspect.piece, other: asNamed(suspect.place) },
            reason: `found in ${containerName(state, difference.container)} when it was counted`,
          },
        ],
      },
    }))
}

/** A place as a command names it. */
function asNamed(place: Suspect['place']): MovedFrom {
  const inside = containerPlace(place)
  return inside
    ? { kind: 'container', no: inside.container, slot: inside.slot }
    : ({ kind: 'place', place } as MovedFrom)
}

type MovedFrom = Extract<Extract<Command, { do: 'explain' }>['how'], { kind: 'moved' }>['other']

/** Each way begins a line that the reason completes. */
function waysToExplain({ id, expected, counted, piece }: Difference): Choice[] {
  const write = (says: string, before: string, after = ''): Choice => ({
    says,
    act: { do: 'write', before, after },
  })
  if (counted < expected) {
    return [
      write('they are lost: say why', `explain ${id} missing because `),
      write('they went to another place: say where', `explain ${id} to `, ' because '),
    ]
  }
  return [
    write(
      'they came from another place: say from where',
      `explain ${id} ${piece === null ? 'PIECE ' : ''}from `,
      ' because ',
    ),
    write('nobody knows them: name what they are', `explain ${id} unknown `, ' because '),
  ]
}
