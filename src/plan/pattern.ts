import type { Account } from '../ledger/account.ts'
import { accountOf } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import { inSingular } from '../trade/bag-line/name-words.ts'
import type { PositionLayout } from '../trade/position-layout/position-layout.ts'
import type { LayoutFacts, PlanFacts } from './facts.ts'

/**
 * The positions of what goes by one name at one home, as the bolts of a cover: a matched set, look-alikes, or several
 * lots of different sizes. In the order in which they were first written down.
 */
export interface Pattern {
  places: { position: string; piece: PieceId }[]
}

export type PatternFault =
  /** A connection, an aid or a tool: it has no place among others. */
  | { code: 'pattern-not-of'; piece: PieceId }
  /** A single piece without a position. */
  | { code: 'pattern-single'; piece: PieceId }
  /** Lots of one home of which nobody wrote down which is where. */
  | { code: 'pattern-positions-unknown'; pieces: PieceId[] }
  /** A position that was written down for two lots of one home. */
  | { code: 'pattern-position-shared'; position: string; pieces: PieceId[] }

/**
 * The pattern that a piece is of. Look-alikes without written positions are numbered from 1; a lot that others of its
 * home leave numbers for takes those.
 * @throws LawBroken for a piece that was never entered.
 */
export function patternOf(facts: PlanFacts, id: PieceId): Pattern | PatternFault {
  const asked = accountOf(facts.ledger, id)
  const { kind } = asked.piece
  if (kind !== 'part' && kind !== 'fastener') return { code: 'pattern-not-of', piece: id }
  const alike = [...facts.ledger.accounts.values()].filter((other) => belongsTogether(other, asked))
  const lots = alike.filter(({ should }) => should > 0)
  const [lot, ...others] = lots
  if (!lot) return { code: 'pattern-not-of', piece: id }
  if (others.length === 0 && lot.should === 1 && written(lot).length === 0) {
    return { code: 'pattern-single', piece: lot.piece.id }
  }
  const positions = positionsOf(lots)
  if (!positions) {
    const unknown = lots.filter((each) => written(each).length === 0)
    return { code: 'pattern-positions-unknown', pieces: unknown.map(({ piece }) => piece.id) }
  }
  const all = [...positions.values()].flat()
  const shared = all.find((position, index) => all.indexOf(position) < index)
  if (shared !== undefined) {
    const holders = lots.filter((each) => positions.get(each.piece.id)?.includes(shared))
    return { code: 'pattern-position-shared', position: shared, pieces: holders.map(({ piece }) => piece.id) }
  }
  const order = orderOf(alike, all)
  const places = lots.flatMap(({ piece }) =>
    (positions.get(piece.id) ?? []).map((position) => ({ position, piece: piece.id })),
  )
  return { places: places.toSorted((a, b) => order.indexOf(a.position) - order.indexOf(b.position)) }
}

/**
 * The drawing of the pattern that a piece is of, where one is in the record; the last one counts. Fasteners that were
 * eased by a drawing before they came off lie as they lay then.
 */
export function layoutOf(facts: PlanFacts, id: PieceId): LayoutFacts | undefined {
  return facts.layouts.findLast(({ pieces }) => pieces.includes(id)) ?? asEased(facts, id)
}

function asEased(facts: PlanFacts, id: PieceId): LayoutFacts | undefined {
  if (facts.loosenings.size === 0) return undefined
  const { piece } = accountOf(facts.ledger, id)
  const eased = [...facts.loosenings.values()].findLast(
    ({ step, name, layout }) => layout && step === piece.step && inSingular(name) === inSingular(piece.name),
  )
  const pattern = eased && patternOf(facts, id)
  if (!eased?.layout || !pattern || 'code' in pattern) return undefined
  const positions = pattern.places.map(({ position }) => position)
  const layout = layoutFor(eased.layout, positions)
  return layout && { ...layout, pieces: [...new Set(pattern.places.map((place) => place.piece))] }
}

/** The part of a drawing that shows some positions; undefined where it lacks one of them. */
export function layoutFor<Layout extends PositionLayout>(
  layout: Layout | undefined,
  positions: readonly string[],
): Pick<Layout, 'shape' | 'places'> | undefined {
  const places = layout?.places.filter(({ position }) => positions.includes(position)) ?? []
  return layout && places.length === positions.length ? { shape: layout.shape, places } : undefined
}

/** One name at one home: `pump cover bolt` and `pump cover bolts` of the pump cover. */
function belongsTogether(other: Account, asked: Account): boolean {
  return (
    other.piece.kind === asked.piece.kind &&
    isSame(other.home.at, asked.home.at) &&
    inSingular(other.piece.name) === inSingular(asked.piece.name)
  )
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
