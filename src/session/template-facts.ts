import type { State } from '../journal/state.ts'
import { labelCode } from '../label/code.ts'
import type { Account } from '../ledger/account.ts'
import { accountOf, placesOf } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import { containerOf } from '../ledger/place.ts'
import { type PatternFault, patternOf } from '../plan/pattern.ts'
import { MOST_POSITIONS } from '../trade/position-layout/position-layout.ts'
import { threadInSize } from '../trade/size-text.ts'

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
  | PatternFault
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
    const set = setOf(state, id)
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

function isSame(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase()
}

function setOf(state: State, id: PieceId): TemplateSet | TemplateFactsRefusal {
  const pattern = patternOf(state, id)
  if ('code' in pattern) return pattern
  const places = pattern.places.map((place) => ({
    ...place,
    diameterMm: diameterOf(accountOf(state.ledger, place.piece)),
  }))
  return { places }
}

function diameterOf({ piece: { kind, size } }: Account): number | null {
  if (kind !== 'fastener' || size === undefined) return null
  return threadInSize(size)?.diameterMm ?? null
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
