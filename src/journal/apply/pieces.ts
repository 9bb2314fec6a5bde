import type { Move } from '../../ledger/account.ts'
import { accountOf } from '../../ledger/ledger.ts'
import type { Piece } from '../../ledger/piece.ts'
import { shimsAtHome } from '../../plan/valves.ts'
import { forgetLooks, forgetLooksAbove } from '../looks.ts'
import { drawnOnce } from '../once.ts'
import type { State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'
import { beginComparison } from './comparing.ts'
import { openContainer } from './containers.ts'
import { succeedChecks } from './judging.ts'
import { carry, enterPieces, stepOf } from './moves.ts'
import { noteArrival } from './waiting.ts'

/** Pieces are moved, replaced, named, measured, drawn and decided about. */
export const pieceAppliers: AppliersOf<
  'moved' | 'supplied' | 'decided' | 'rehomed' | 'renamed' | 'sized' | 'settled' | 'measured' | 'laid-out'
> = {
  moved: (state, { moves, opened }) => {
    if (opened) openContainer(state, opened)
    carry(state, moves)
    if (moves.some(isAtMachine)) forgetLooks(state)
  },
  supplied: (state, entry) => {
    const { pieces, openings, moves, retired, opened, compare = [] } = entry
    if (opened) openContainer(state, opened)
    enterPieces(state, pieces, openings)
    for (const piece of retired) accountOf(state.ledger, piece).should = 0
    for (const piece of pieces) succeed(state, piece)
    carry(state, moves)
    for (const each of compare) beginComparison(state, each, entry.order?.id)
    noteArrival(state, entry)
    for (const piece of retired) forgetLooksAbove(state, accountOf(state.ledger, piece).piece.step)
  },
  decided: (state, { piece, what, count }) => {
    if (what === 'left-off') accountOf(state.ledger, piece).should -= count
    if (what === 'lost-accepted') state.lostAccepted.set(piece, (state.lostAccepted.get(piece) ?? 0) + count)
    if (what === 'use-again') state.used.delete(piece)
  },
  rehomed: (state, { homes }) => {
    for (const { piece, position } of homes) {
      const account = accountOf(state.ledger, piece)
      account.home = { ...account.home, position }
    }
  },
  renamed: (state, { mates, name }) => {
    for (const id of mates) {
      const account = accountOf(state.ledger, id)
      account.piece = { ...account.piece, name }
    }
  },
  sized: (state, { sizes }) => {
    for (const { piece, size } of sizes) {
      const account = accountOf(state.ledger, piece)
      account.piece = { ...account.piece, size }
    }
  },
  settled: (state, { fault, how }) => {
    const known = state.faults.get(fault)
    if (!known) throw new Error(`no fault ${fault}`)
    known.settled = how
  },
  measured: (state, { measure }) => {
    if (measure.piece !== undefined) accountOf(state.ledger, measure.piece)
    if (measure.step !== null) stepOf(state, measure.step)
    // A clearance holds for the shims that were there, whatever is decided about them later.
    const shims = measure.measurement.kind === 'valve-clearance' ? shimsAtHome(state.ledger) : []
    state.measures.set(measure.id, shims.length > 0 ? { ...measure, shims } : measure)
  },
  'laid-out': (state, { of: pieces, shape, places }) => {
    for (const piece of pieces) accountOf(state.ledger, piece)
    drawnOnce(places)
    state.layouts = [
      ...state.layouts.filter((known) => !known.pieces.some((piece) => pieces.includes(piece))),
      { pieces: [...pieces], shape, places },
    ]
  },
}

/** Whether a move takes a piece off the machine or puts it there. */
export function isAtMachine({ from, to }: Move): boolean {
  return from === 'machine' || to === 'machine'
}

/** What was asked of a piece is asked of the one that takes its home: its marks, and how it is tightened. */
function succeed(state: State, piece: Piece): void {
  const { id, replaces } = piece
  if (replaces === undefined) return
  succeedChecks(state, piece)
  for (const mark of state.marks.values()) if (mark.piece === replaces) mark.piece = id
  for (const tightening of state.tightenings.values()) {
    if (tightening.piece === replaces) tightening.piece = id
    tightening.with = tightening.with?.map((each) => (each === replaces ? id : each))
  }
  // A drawing shows the old pieces as well: what took their homes lies where they lay.
  for (const layout of state.layouts) if (layout.pieces.includes(replaces)) layout.pieces.push(id)
}
