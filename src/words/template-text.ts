import type { State } from '../journal/state.ts'
import type { TemplateContent, TemplatePlace } from '../label/template-content.ts'
import type { Account } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { MarkFacts } from '../plan/facts.ts'
import type { PlaceFacts, TemplateFacts, TemplateSet } from '../session/template-facts.ts'
import { joined, singular } from './grammar.ts'
import { jobLine } from './label-text/job-line.ts'
import { oneLine } from './label-text/one-line.ts'
import { rangesText } from './label-text/position-ranges.ts'
import { placeName } from './places.ts'

/**
 * What a template says of sets of pieces.
 * @param pitch millimetres between neighbours where the sheet is at full size, or null
 */
export function templateContent(state: State, facts: TemplateFacts, pitch: number | null): TemplateContent {
  const places = facts.sets.flatMap((set) => set.places)
  const title = joined(facts.sets.map((set) => setName(state, set)))
  const homes = facts.sets.map(({ places: [first] }) =>
    first ? accountAt(state, first)?.home.at : undefined,
  )
  const marks = marksOf(state, places)
  const mark = sharedMark(marks, places)
  return {
    kind: 'template',
    name: `template for ${oneLine(title)}`,
    title: oneLine(title),
    home: oneLine(joined([...new Set(homes)].filter((home) => home !== undefined))),
    mark: mark === null ? null : oneLine(mark),
    edge: oneLine(edgeText(marks)),
    how: howText(places),
    scale: scaleText(pitch),
    check: 'this line is 100 mm: print without scaling',
    job: jobLine(state),
    places: places.map((place) => placeOf(state, place, places, mark === null ? marks : [])),
    container: facts.container && {
      name: oneLine(placeName(state, `c${facts.container.no}`)),
      code: facts.container.code,
    },
  }
}

/** `cam caps I1–I4, E1–E4`. */
function setName(state: State, { places }: TemplateSet): string {
  const names = places.flatMap((place) => accountAt(state, place)?.piece.name ?? [])
  // Several lots may be written in the singular and in the plural: all of them are many.
  const [name = 'pieces'] = names.toSorted((a, b) => b.length - a.length)
  return `${places.length === 1 ? singular(name) : name} ${rangesText(places.map(({ position }) => position))}`
}

interface MarkOn {
  text: string
  piece: PieceId
}

function marksOf(state: State, places: readonly PlaceFacts[]): MarkOn[] {
  const pieces = new Set(places.map(({ piece }) => piece))
  const isOnOne = (mark: MarkFacts): mark is MarkFacts & { piece: PieceId } =>
    mark.piece !== undefined && pieces.has(mark.piece)
  return [...state.marks.values()].filter(isOnOne)
}

/** A mark that stands once for the sheet: the only one there is, with the positions that carry it unless all do. */
function sharedMark(marks: readonly MarkOn[], places: readonly PlaceFacts[]): string | null {
  const [first] = marks
  if (!first || marks.some(({ text }) => text.toLowerCase() !== first.text.toLowerCase())) return null
  const marked = places.filter(({ piece }) => marks.some((mark) => mark.piece === piece))
  if (marked.length === places.length) return first.text
  return `${rangesText(marked.map(({ position }) => position))}: ${first.text}`
}

/** Where arrows point, in the words of the marks where these agree on it: `arrow: towards the chain`. */
function edgeText(marks: readonly MarkOn[]): string {
  const ways = marks.flatMap(({ text }) => /^arrows?\b[ :]*(.*)$/i.exec(text)?.[1] ?? [])
  const [way, ...others] = [...new Set(ways.map((each) => each.toLowerCase()))]
  return way && others.length === 0 ? `arrow: ${way}` : 'arrows point to this edge'
}

function placeOf(
  state: State,
  place: PlaceFacts,
  all: readonly PlaceFacts[],
  marks: readonly MarkOn[],
): TemplatePlace {
  const own = marks.filter(({ piece }) => piece === place.piece).map(({ text }) => text)
  const caption = oneLine([accountAt(state, place)?.piece.size, ...own].filter(Boolean).join(', '))
  return {
    position: oneLine(place.position),
    caption: caption === '' ? null : caption,
    stands: isUnlikeMost(state, place, all),
    diameterMm: place.diameterMm,
  }
}

/** A bolt that is not of the size that more than half of them have is the one to look out for. */
function isUnlikeMost(state: State, place: PlaceFacts, all: readonly PlaceFacts[]): boolean {
  if (place.diameterMm === null) return false
  const sizeAt = (each: PlaceFacts) => accountAt(state, each)?.piece.size
  const sizes = all.map(sizeAt)
  const usual = sizes.find((size) => sizes.filter((other) => other === size).length * 2 > sizes.length)
  return usual !== undefined && sizeAt(place) !== usual
}

function howText(places: readonly PlaceFacts[]): string {
  const through = places.some(({ diameterMm }) => diameterMm !== null)
  const laid = places.some(({ diameterMm }) => diameterMm === null)
  if (through && laid) return 'Push each bolt through its own hole, lay each other piece into its own box.'
  return through
    ? 'Stick onto cardboard and push each one through its own hole.'
    : 'Lay each piece into its own box.'
}

function scaleText(pitch: number | null): string {
  return pitch === null
    ? 'Not to scale: positions as they lie to each other.'
    : `Full size 1:1, ${pitch} mm between neighbours.`
}

function accountAt(state: State, { piece }: PlaceFacts): Account | undefined {
  return state.ledger.accounts.get(piece)
}
