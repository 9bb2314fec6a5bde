import type { State } from '../journal/state.ts'
import { labelCode } from '../label/code.ts'
import type { Account } from '../ledger/account.ts'
import { accountOf, placesOf } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import { containerOf } from '../ledger/place.ts'
import { singular } from '../trade/bag-line/nouns.ts'
import { MOST_POSITIONS } from '../trade/position-layout/position-layout.ts'
import { readThread } from '../trade/thread.ts'

/** What a template shows: sets of pieces with the positions in which they belong. */
export interface TemplateFacts {
  sets: TemplateSet[]
  /** The one container that all of it lies in, as far as it is off the machine and not gone. */
  container: { no: number; code: string } | null
}

/** What goes by one name at one home: a matched set, look-alikes, or several lots of different sizes. */
export interface TemplateSet {
  places: PlaceFacts[]
}

export interface PlaceFacts {
  position: string
  piece: PieceId
  /** Nominal diameter of the thread in millimetres; null for what is no fastener or has none written. */
  diameterMm: number | null
}

export type TemplateFactsRefusal =
  /** A connection, an aid or a tool: it has no place among others. */
  | { code: 'template-not-of'; piece: PieceId }
  /** A single piece without a position. */
  | { code: 'template-single'; piece: PieceId }
  /** Lots of one home of which nobody wrote down which is where. */
  | { code: 'template-positions-unknown'; pieces: PieceId[] }
  | { code: 'template-position-shared'; position: string; pieces: PieceId[] }
  | { code: 'template-too-many'; positions: number; most: number }

export type TemplateFactsReading =
  | { ok: true; facts: TemplateFacts }
  | { ok: false; refusal: TemplateFactsRefusal }

/**
 * The sets that pieces belong to, each once, in the order asked for, for one sheet. Look-alikes without written
 * positions are numbered from 1; a lot that others of its home leave numbers for takes those.
 * @throws LawBroken for a piece that was never entered.
 */
export function templateFacts(state: State, pieces: readonly PieceId[]): TemplateFactsReading {
  const sets: TemplateSet[] = []
  for (const id of pieces) {
    if (sets.some(({ places }) => places.some(({ piece }) => piece === id))) continue
    const set = setOf(state, accountOf(state.ledger, id))
    if ('code' in set) return { ok: false, refusal: set }
    if (sets.some((other) => other.places[0]?.piece === set.places[0]?.piece)) continue
    sets.push(set)
  }
  const places = sets.flatMap((set) => set.places)
  const shared = places.find(
    ({ position }, index) => places.findIndex((other) => isSame(other.position, position)) < index,
  )
  if (shared) {
    const both = places.filter(({ position }) => isSame(position, shared.position))
    return {
      ok: false,
      refusal: {
        code: 'template-position-shared',
        position: shared.position,
        pieces: both.map(({ piece }) => piece),
      },
    }
  }
  if (places.length > MOST_POSITIONS) {
    return {
      ok: false,
      refusal: { code: 'template-too-many', positions: places.length, most: MOST_POSITIONS },
    }
  }
  return { ok: true, facts: { sets, container: containerOfAll(state, places) } }
}

function setOf(state: State, asked: Account): TemplateSet | TemplateFactsRefusal {
  const { id, kind } = asked.piece
  if (kind !== 'part' && kind !== 'fastener') return { code: 'template-not-of', piece: id }
  const alike = [...state.ledger.accounts.values()].filter((other) => belongsTogether(other, asked))
  const lots = alike.filter(({ should }) => should > 0)
  const [lot, ...others] = lots
  if (!lot) return { code: 'template-not-of', piece: id }
  if (others.length === 0 && lot.should === 1 && written(lot).length === 0) {
    return { code: 'template-single', piece: lot.piece.id }
  }
  const positions = positionsOf(lots)
  if (!positions) {
    const unknown = lots.filter((each) => written(each).length === 0)
    return { code: 'template-positions-unknown', pieces: unknown.map(({ piece }) => piece.id) }
  }
  const order = orderOf(alike, [...positions.values()].flat())
  const places = lots.flatMap((each) =>
    (positions.get(each.piece.id) ?? []).map((position) => ({
      position,
      piece: each.piece.id,
      diameterMm: threadOf(each),
    })),
  )
  return { places: places.toSorted((a, b) => order.indexOf(a.position) - order.indexOf(b.position)) }
}

/** One name at one home: `pump cover bolt` and `pump cover bolts` of the pump cover. */
function belongsTogether(other: Account, asked: Account): boolean {
  return (
    other.piece.kind === asked.piece.kind &&
    isSame(other.home.at, asked.home.at) &&
    isSame(wordsOf(other.piece.name), wordsOf(asked.piece.name))
  )
}

function wordsOf(name: string): string {
  return name.split(' ').map(singular).join(' ')
}

function isSame(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase()
}

function written({ home }: Account): string[] {
  return home.position === undefined ? (home.alikeAt ?? []) : [home.position]
}

/** The positions of each lot; null where several lots leave open which of them is where. */
function positionsOf(lots: readonly Account[]): Map<PieceId, string[]> | null {
  const positions = new Map(lots.map((lot) => [lot.piece.id, written(lot)]))
  const [open, ...others] = lots.filter((lot) => written(lot).length === 0)
  if (!open) return positions
  if (others.length > 0) return null
  const taken = [...positions.values()].flat()
  const numbers = Array.from({ length: open.should + taken.length }, (_, index) => `${index + 1}`)
  const free = numbers.filter((number) => !taken.includes(number))
  if (free.length !== open.should) return null
  return positions.set(open.piece.id, free)
}

/** As they were first written down, whatever was replaced since; numbers of several lots among each other by number. */
function orderOf(alike: readonly Account[], positions: readonly string[]): string[] {
  const areNumbers = positions.every((position) => /^\d+$/.test(position))
  const sets = new Set(alike.map(({ piece }) => piece.set ?? piece.id))
  if (areNumbers && sets.size > 1) return positions.toSorted((a, b) => Number(a) - Number(b))
  const first = alike.flatMap(({ piece }) => piece.home.position ?? piece.home.alikeAt ?? [])
  return [...new Set([...first, ...positions])]
}

/** The thread that a fastener's size begins with: `M6x25` of `M6x25 hex 8`, `1/4 NPT`. */
function threadOf({ piece: { kind, size } }: Account): number | null {
  if (kind !== 'fastener' || size === undefined) return null
  const words = size.split(' ')
  for (const count of [2, 1]) {
    const reading = readThread(words.slice(0, count).join(' '))
    if (reading.understood) return reading.value.diameterMm
  }
  return null
}

function containerOfAll(state: State, places: readonly PlaceFacts[]): TemplateFacts['container'] {
  const gone = ['machine', 'scrap', 'lost', 'supplier']
  const lying = [...new Set(places.map(({ piece }) => piece))]
    .flatMap((piece) => placesOf(state.ledger, piece))
    .filter(({ place }) => !gone.includes(place))
  const [no, ...others] = [...new Set(lying.map(({ place }) => containerOf(place)))]
  if (no === undefined || no === null || others.length > 0) return null
  return { no, code: labelCode(state.job.no, no) }
}
