import type { Account } from '../../ledger/account.ts'
import { isMatched, type PieceId } from '../../ledger/piece.ts'
import type { OrderBy, TighteningFacts, TighteningId } from '../../plan/facts.ts'
import { layoutFor, layoutOf, patternOf } from '../../plan/pattern.ts'
import type { Pass } from '../../plan/tightening.ts'
import { inOrder, proposeOrder } from '../../trade/tightening-order/order.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { areMates, matesOf } from './mates.ts'
import { knownPiece, refuse } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/**
 * Sets the passes of a tightening, as the machine's manual gives them, and the order of the fasteners: the one given,
 * else that of a rule on the drawing of their positions, else as they are named.
 */
export function setTightening(state: State, command: Of<'set-tightening'>): EntryBodyOf<'tightening-set'> {
  const { piece: id, passes, condition, because } = command
  const others = [...new Set(command.with)].filter((each) => each !== id)
  const lots = [id, ...others].map((each) => knownPiece(state, each))
  for (const { should, piece } of lots) {
    // What does not go back is not tightened.
    if (should === 0) refuse({ code: 'not-for-home', piece: piece.id })
  }
  const { piece, home } = knownPiece(state, id)
  const names = fastenerNames(state, lots)
  const { order, orderBy } = orderFor(state, command, names)
  if (passes.length === 0) refuse({ code: 'text-missing', what: 'text' })
  if (passes.length > 20 || order.length > 200)
    refuse({ code: 'count-wrong', count: Math.max(passes.length, order.length) })
  wholePasses(passes)
  const known = tighteningsOf(state, lots)
  // New passes would wipe out what was turned, and the doubt about a bolt that may have been.
  const begun = known.find(({ suspect, done }) => suspect || done.some(({ size }) => size > 0))
  if (begun) refuse({ code: 'tightening-begun', tightening: begun.id })
  // One that has other lots as well keeps them: they must not lose what was asked of them.
  const replaced = known.find((tightening) => lotsOf(state, tightening).every((lot) => isAmong(lots, lot)))
  const tighteningId: TighteningId = replaced?.id ?? `t${state.dealt.tightening + 1}`
  return {
    type: 'tightening-set',
    tightening: {
      id: tighteningId,
      name: `${home.at}: ${piece.name}`,
      piece: id,
      ...(others.length > 0 && { with: others }),
      step: piece.step,
      passes: passes.map((pass) => inItsOrder(state, pass, id, names)),
      order,
      ...(orderBy !== undefined && { orderBy }),
      ...(condition !== undefined && { condition }),
      ...(because !== undefined && { because }),
    },
  }
}

/** Refuses passes that no tightening has: without a value, marked before the end, backed off before anything else. */
function wholePasses(passes: readonly Pass[]): void {
  for (const [index, pass] of passes.entries()) {
    const value = 'newtonMetres' in pass ? pass.newtonMetres : 'degrees' in pass ? pass.degrees : undefined
    if (value !== undefined && !(value > 0 && value < Number.POSITIVE_INFINITY))
      refuse({ code: 'count-wrong', count: value })
    if (pass.kind === 'witness' && index < passes.length - 1)
      refuse({ code: 'passes-wrong', why: 'witness-not-last' })
    if (pass.kind === 'back-off' && index === 0) refuse({ code: 'passes-wrong', why: 'nothing-to-back-off' })
  }
}

/** The fasteners of some lots by name: the positions of a set, or the numbers of common ones. */
function fastenerNames(state: State, lots: readonly Account[]): string[] {
  const [first] = lots as [Account]
  const pieces = new Set<PieceId>(
    lots.flatMap((lot) =>
      isMatched(lot.piece) ? matesOf(state, lot).map(({ piece }) => piece.id) : [lot.piece.id],
    ),
  )
  const pattern = patternOf(state, first.piece.id)
  if (!('code' in pattern)) {
    const places = pattern.places.filter(({ piece }) => pieces.has(piece))
    if (new Set(places.map(({ piece }) => piece)).size === pieces.size)
      return places.map(({ position }) => position)
  }
  // One lot alone needs no positions to be counted through.
  if (lots.length === 1 && !isMatched(first.piece)) return numbersTo(first.should)
  return refuse({
    code: 'no-pattern',
    fault: 'code' in pattern ? pattern : { code: 'pattern-positions-unknown', pieces: [...pieces] },
  })
}

function numbersTo(count: number): string[] {
  return Array.from({ length: count }, (_, index) => String(index + 1))
}

function orderFor(
  state: State,
  { piece, order, by }: Of<'set-tightening'>,
  names: readonly string[],
): { order: string[]; orderBy?: OrderBy } {
  if (order) {
    const missing = names.filter((name) => !order.includes(name))
    const unknownNames = order.filter((name) => !names.includes(name))
    const twice = order.filter((name, index) => order.indexOf(name) !== index)
    if (missing.length + unknownNames.length + twice.length > 0)
      refuse({ code: 'order-wrong', missing, unknown: unknownNames, twice })
    return { order, orderBy: 'manual' }
  }
  const layout = layoutFor(layoutOf(state, piece), names)
  if (by !== undefined) {
    if (!layout) refuse({ code: 'not-laid-out', piece })
    const ruled = inOrder(layout, by)
    return ruled
      ? { order: ruled, orderBy: by }
      : refuse({ code: 'rule-not-for-shape', rule: by, shape: layout.shape })
  }
  if (!layout || names.length === 1) return { order: [...names] }
  const proposed = proposeOrder(layout)
  return { order: proposed.order, orderBy: proposed.rule }
}

/** A pass that goes round clockwise has an order of its own, where it is known how the fasteners lie. */
function inItsOrder(state: State, pass: Pass, piece: PieceId, names: readonly string[]): Pass {
  const layout = pass.round ? layoutFor(layoutOf(state, piece), names) : undefined
  const order = layout && inOrder(layout, 'clockwise')
  return order ? { ...pass, order } : pass
}

/** The tightenings that some of the lots have already. */
function tighteningsOf(state: State, lots: readonly Account[]): TighteningFacts[] {
  return [...state.tightenings.values()].filter((tightening) =>
    lotsOf(state, tightening).some((lot) => isAmong(lots, lot)),
  )
}

function lotsOf(state: State, { piece, with: others = [] }: TighteningFacts): Account[] {
  return [piece, ...others].map((each) => knownPiece(state, each))
}

/** Whether a lot is one of those, or of a set with one of them. */
function isAmong(lots: readonly Account[], lot: Account): boolean {
  return lots.some(
    (other) => other.piece.id === lot.piece.id || (other.piece.set !== undefined && areMates(other, lot)),
  )
}
