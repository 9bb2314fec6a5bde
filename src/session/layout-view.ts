import type { State } from '../journal/state.ts'
import { accountOf } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { LayoutFacts } from '../plan/facts.ts'
import { layoutOf, type PatternFault, patternOf } from '../plan/pattern.ts'
import type { PositionLayout } from '../trade/position-layout/position-layout.ts'
import { proposeLayout } from '../trade/position-layout/propose-layout.ts'

/** The positions of the pattern that a piece is of, drawn, with what each of them is for. */
export interface LayoutView {
  piece: PieceId
  /** As in the record; else as the names of the positions suggest it. Null for what has no positions. */
  layout: LayoutFacts | PositionLayout | null
  isProposed: boolean
  fault: PatternFault | null
  /** The size of the piece at each position, where it has one. */
  sizes: Map<string, string>
}

/** Gathers what a drawing of a pattern shows. */
export function layoutView(state: State, piece: PieceId): LayoutView {
  const pattern = patternOf(state, piece)
  if ('code' in pattern) return { piece, layout: null, isProposed: false, fault: pattern, sizes: new Map() }
  const known = layoutOf(state, piece)
  const names = pattern.places.map(({ position }) => position)
  const sizes = pattern.places.flatMap(({ position, piece: id }) => {
    const { size } = accountOf(state.ledger, id).piece
    return size === undefined ? [] : [[position, size] as const]
  })
  return {
    piece,
    layout: known ?? proposeLayout(names).layout,
    isProposed: known === undefined,
    fault: null,
    sizes: new Map(sizes),
  }
}
