import { counted, numberRanges } from '../../words/grammar.ts'
import { liesAt, liesIn } from '../../words/lookups.ts'
import { carriedText, countedPiece, pieceName } from '../../words/pieces.ts'
import { containerPath, containerPlace, placeName, whereName } from '../../words/places.ts'
import { type Choice, goTo, type Large, type Page, type Rows, rowsOf } from '../page.ts'
import { cut, type Line, line, padded, strong } from '../text/line.ts'
import { setNames } from './content-names.ts'
import { inLarge } from './large-words.ts'
import { type PieceId, type PlaceOfPiece, perVersion, type Scene, type State } from './scene.ts'
import { search, wordsNow } from './search.ts'

/** What lies where: every container in the one it stands in, with its content; or what a search finds. */
export function liesPage(scene: Scene, words: string, typed: string): Page {
  const { session } = scene
  const { state } = session
  const wanted = wordsNow(typed, words)
  const hits = wanted === '' ? [] : found(scene, wanted)
  const rows = wanted === '' ? allPlaces(scene) : hitRows(scene, hits)
  const count = wanted === '' ? counted(state.containers.size, 'container') : `${rows.length} found`
  return {
    title: line(strong('WHAT LIES WHERE'), `  ${count}`, wanted === '' ? '' : line(' for ', strong(wanted))),
    top: [],
    rows:
      rows.length > 0
        ? rows
        : rowsOf([line('     ', wanted === '' ? 'No container yet.' : 'Nothing answers to these words.')]),
    isNarrowed: wanted !== words.trim(),
    enter:
      words.trim() === ''
        ? null
        : { says: 'everything again', act: { do: 'turn', to: { at: 'lies', words: '' } } },
    choice: (no) => containerChoice(state, no),
    // Among several the list is wanted.
    large: hits[0] && hits.length === 1 ? hitInLarge(state, hits[0]) : null,
  }
}

function containerChoice(state: State, no: number): Choice | undefined {
  return state.containers.has(no) || state.blanks.has(no)
    ? goTo(`look into ${placeName(state, `c${no}`)}`, { at: 'scan', text: String(no) })
    : undefined
}

/** A container, with how deep it stands in others. */
interface Standing {
  no: number
  depth: number
  /** How many stand in it. */
  holds: number
}

const OPEN_PLACES: readonly PlaceOfPiece[] = ['bench', 'out', 'supplier', 'spare', 'lost']

function allPlaces(scene: Scene): Rows {
  const { session, width } = scene
  const { state } = session
  const open = perVersion(session, 'open places', () =>
    OPEN_PLACES.filter((place) => state.ledger.byPlace.has(place)),
  )
  const standing = perVersion(session, 'standing', () => standingOrder(state))
  const carriers = perVersion(session, 'carriers', () => carriersOf(state))
  const unused = perVersion(session, 'unused labels', () => unusedLabels(state))
  const last = open.length + standing.length
  const end = last + carriers.length
  return {
    length: end + unused.length,
    at(index) {
      if (index >= end) return row('', 'unused labels', unused.join(''), width)
      const carrier = carriers[index - last]
      if (carrier !== undefined)
        return row(carrier, `on ${pieceName(state, carrier)}`, heldAt(state, carrier, width), width)
      const place = open[index]
      if (place !== undefined) return row('', placeName(state, place), heldAt(state, place, width), width)
      const { no, depth, holds } = standing[index - open.length] as Standing
      const container = state.containers.get(no)
      const name = [placeName(state, `c${no}`).replace(/ \d+$/, ''), container?.name]
        .filter(Boolean)
        .join(' ')
      return row(
        String(no),
        '  '.repeat(depth) + name,
        container?.voided ? 'label void' : heldIn(state, no, { holds, width }),
        width,
      )
    },
  }
}

/** The pieces on which others sit, in the order of the record. */
function carriersOf({ ledger }: State): PieceId[] {
  return [...ledger.accounts.keys()].filter((piece) => ledger.byPlace.has(piece))
}

/** The numbers of labels on paper that nothing has yet; nothing where there are none. */
function unusedLabels({ blanks }: State): string[] {
  const free = [...blanks].flatMap(([no, { voided }]) => (voided === null ? [no] : []))
  return free.length === 0 ? [] : [numberRanges(free)]
}

/** Containers in the order in which one would walk to them: what stands in one comes right after it. */
function standingOrder(state: State): Standing[] {
  const inside = new Map<number | null, number[]>()
  for (const { no, inside: outer } of state.containers.values()) {
    const list = inside.get(outer)
    if (list) list.push(no)
    else inside.set(outer, [no])
  }
  const order: Standing[] = []
  const visit = (no: number, depth: number) => {
    const inner = inside.get(no) ?? []
    order.push({ no, depth, holds: inner.length })
    for (const each of inner) visit(each, depth + 1)
  }
  for (const no of inside.get(null) ?? []) visit(no, 0)
  return order
}

function heldAt(state: State, place: PlaceOfPiece, width: number): string {
  return inBrief(state.ledger.byPlace.get(place) ?? [], width, (piece) => {
    const count = state.ledger.accounts.get(piece)?.at.get(place) ?? 0
    return `${countedPiece(state, piece, count)}${carriedText(state, piece)}`
  })
}

function heldIn(state: State, no: number, { holds, width }: { holds: number; width: number }): string {
  const inside = holds === 0 ? [] : [counted(holds, 'container')]
  const lying = inBrief([...lotsIn(state, no), ...inside], width, (each) =>
    typeof each === 'string'
      ? each
      : `${countedPiece(state, each.piece, each.count)}${carriedText(state, each.piece)}`,
  )
  return lying === '' ? 'empty' : lying
}

/** What lies in a container: the pieces of a set by one name, where there are few, and nothing sits on them. */
function lotsIn(state: State, no: number): (Hit | string)[] {
  const lots = liesIn(state, no)
  if (lots.length > MOST_TOGETHER || lots.some(({ piece }) => carriedText(state, piece) !== '')) return lots
  // In which slot each lies is told on its own page.
  return setNames(
    state,
    lots.map(({ piece, count }) => ({ piece, count })),
  )
}

const MOST_TOGETHER = 40

/** Names until the row is full: on a bench may lie thousands. */
function inBrief<Thing>(things: Iterable<Thing>, width: number, name: (thing: Thing) => string): string {
  let text = ''
  for (const thing of things) {
    text += (text === '' ? '' : ', ') + name(thing)
    if (text.length > width) break
  }
  return text
}

/** A third of the row for the name, the rest for what is in it. */
function row(no: string, name: string, content: string, width: number): Line {
  const room = Math.max(16, Math.floor(width / 3))
  return cut(line(strong(no.padStart(5)), '  ', padded(line(strong(name)), room), ' ', content), width)
}

/** Every lot of pieces that answers to the words, by its name, its home or its place. */
function found({ session }: Scene, words: string): readonly Hit[] {
  const { state } = session
  return search(session, words, {
    name: 'lots',
    all: () => [...state.ledger.accounts.keys()].flatMap((piece) => liesAt(state, piece)),
    textOf: ({ piece, place, count }) => searchText(state, piece, place, count),
    idOf: ({ piece }) => piece,
    isId: (word) => /^p\d+$/.test(word),
  })
}

type Hit = ReturnType<typeof liesAt>[number]

function hitInLarge(state: State, { piece, place, count }: Hit): Large {
  return inLarge(placeName(state, place), [countedPiece(state, piece, count)])
}

function hitRows({ session, width }: Scene, hits: readonly Hit[]): Rows {
  const { state } = session
  return {
    length: hits.length,
    at(index) {
      const { piece, place, count } = hits[index] as Hit
      const no = containerPlace(place)?.container
      const where = no === undefined ? whereName(state, place) : `in ${containerPath(state, no)}`
      return cut(
        line(
          strong(String(no ?? '').padStart(5)),
          '  ',
          countedPiece(state, piece, count),
          '  ',
          strong(where),
        ),
        width,
      )
    },
  }
}

function searchText(
  state: State,
  piece: Parameters<typeof liesAt>[1],
  place: PlaceOfPiece,
  count: number,
): string {
  const account = state.ledger.accounts.get(piece)
  const no = containerPlace(place)?.container
  const container = no === undefined ? undefined : state.containers.get(no)
  return [countedPiece(state, piece, count), account?.home.at, whereName(state, place), container?.name].join(
    ' ',
  )
}
