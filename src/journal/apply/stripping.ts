import type { Move } from '../../ledger/account.ts'
import { accountOf } from '../../ledger/ledger.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { forgetLooks, forgetLooksAbove } from '../looks.ts'
import type { State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'
import { openContainer, takeInHand } from './containers.ts'
import { carry, enterPieces, stepOf } from './moves.ts'
import { beginStrip } from './steps.ts'

/** What comes off, out and in on the way down. */
export const strippingAppliers: AppliersOf<
  'strip-began' | 'strip-ended' | 'came-off' | 'drained' | 'marked' | 'put-in'
> = {
  'strip-began': (state, { step }) => beginStrip(state, step),
  'strip-ended': (state, { step }) => {
    stepOf(state, step).stripping = false
    if (state.strip === step) state.strip = null
    state.hand = null
  },
  'came-off': (state, { step, began, opened, pieces, openings, moves, faults }) => {
    if (began) beginStrip(state, began)
    if (opened) openContainer(state, opened)
    enterPieces(state, pieces, openings)
    carry(state, moves)
    for (const { id } of pieces) if (isSingleUse(state, id)) state.used.add(id)
    for (const fault of faults ?? []) state.faults.set(fault.id, { ...fault, step, settled: null })
    takeInHand(state, containerFilled(moves))
    forgetLooksAbove(state, step)
  },
  drained: (state, { fluid: { id, name, litres, typed, step }, began }) => {
    if (began) beginStrip(state, began)
    state.fluids.set(id, { id, name, litresOut: litres, typed, step, filledLitres: null })
  },
  marked: (state, { mark, began }) => {
    if (began) beginStrip(state, began)
    state.marks.set(mark.id, { ...mark, confirmed: false })
  },
  'put-in': (state, { began, pieces, openings, moves }) => {
    if (began) beginStrip(state, began)
    enterPieces(state, pieces, openings)
    carry(state, moves)
    if (moves.some(({ to }) => to === 'machine')) forgetLooks(state)
  },
}

function containerFilled(moves: readonly Move[]): number | null {
  for (const { to } of [...moves].reverse()) {
    const match = /^c(\d+)/.exec(to)
    if (match) return Number(match[1])
  }
  return null
}

/** Whether a piece is used up once it was fitted and came off again. */
export function isSingleUse(state: State, piece: PieceId): boolean {
  return accountOf(state.ledger, piece).piece.singleUse === true
}
