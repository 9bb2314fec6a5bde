import type { State } from '../journal/state.ts'
import type { LooseningFacts, TighteningFacts } from '../plan/facts.ts'
import { layoutFor, layoutOf, patternOf } from '../plan/pattern.ts'
import { type NextTurn, nextTurn, passOrder } from '../plan/tightening.ts'
import { stageCells } from '../trade/position-drawing/cells.ts'
import type { Cell } from '../trade/position-drawing/drawn-cell.ts'
import type { PositionLayout } from '../trade/position-layout/position-layout.ts'
import { type LayoutRule, proposeLayout } from '../trade/position-layout/propose-layout.ts'

/** How far a tightening or a loosening has come, ready to be drawn. */
export interface TighteningStage {
  /** Null where nobody drew how they lie and their names tell of no rows. */
  layout: PositionLayout | null
  /** All of them as they were written down. */
  written: string[]
  /** Whether the names of the fasteners are all that it rests on. */
  isProposed: boolean
  /** The pass at hand, counted from 0; the last one once all are through. */
  pass: number
  next: NextTurn | null
  /** Those after the next one, in the order of this pass. */
  after: string[]
  cells: Map<string, Cell>
}

/** Where each fastener lies and whether it is through the pass at hand. */
export function tighteningStage(state: State, joint: TighteningFacts | LooseningFacts): TighteningStage {
  const known = 'piece' in joint ? layoutOf(state, joint.piece) : joint.layout
  const layout = layoutFor(known, joint.order)
  const next = nextTurn(joint)
  const pass = next?.pass ?? joint.passes.length - 1
  const done = joint.done[pass] ?? new Set()
  const faulty = [...state.faults.values()].flatMap(({ settled, in: at }) =>
    settled === null && at?.tightening === joint.id ? [at.fastener] : [],
  )
  const written = asWritten(state, joint)
  const proposed = proposeLayout(written)
  return {
    layout: layout ?? (TELLS_ROWS[proposed.rule.rule] ? proposed.layout : null),
    written,
    isProposed: layout === undefined,
    pass,
    next,
    after: passOrder(joint, pass).filter((name) => !done.has(name) && name !== next?.fastener),
    cells: stageCells({ order: joint.order, done, next, faulty: new Set(faulty) }),
  }
}

/** Rows by letters or words are how people name what lies in rows; numbers alone only count. */
const TELLS_ROWS: Record<LayoutRule['rule'], boolean> = {
  'lettered-rows': true,
  'named-rows': true,
  'numbered-row': false,
  'as-given': false,
  wrapped: false,
}

/** The fasteners as they were first written down, else as they are counted: the order of turning says nothing of rows. */
function asWritten(state: State, joint: TighteningFacts | LooseningFacts): string[] {
  const pattern = 'piece' in joint ? patternOf(state, joint.piece) : null
  const written = pattern && 'places' in pattern ? pattern.places.map(({ position }) => position) : []
  const places = (name: string) => written.indexOf(name)
  return joint.order.every((name) => written.includes(name))
    ? joint.order.toSorted((a, b) => places(a) - places(b))
    : joint.order.toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true }))
}
