import type { Move } from '../../ledger/account.ts'
import { accountOf } from '../../ledger/ledger.ts'
import { belongsInToolbox, type Piece } from '../../ledger/piece.ts'
import { forgetLooks, forgetLooksAbove } from '../looks.ts'
import type { State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'
import { openContainer } from './containers.ts'
import { carry, enterPieces } from './moves.ts'
import { isAtMachine } from './pieces.ts'

/** A container is counted, and what does not agree is explained. */
export const countingAppliers: AppliersOf<'counted' | 'explained'> = {
  counted: (state, { container, lines }) => {
    if (lines.every(({ difference }) => difference === undefined)) state.agreed.add(container)
    else state.agreed.delete(container)
    for (const { piece, expected, counted, difference } of lines) {
      settleByCount(state, container, piece, expected === counted)
      if (!difference) continue
      state.cleared = false
      state.differences.set(difference, {
        id: difference,
        container,
        piece,
        expected,
        counted,
        settled: null,
      })
    }
  },
  explained: (state, { difference, how, pieces, openings, moves, opened, reason }) => {
    if (opened) openContainer(state, opened)
    enterPieces(state, pieces, openings)
    carry(state, moves)
    forgetWhatLay(state, moves)
    const known = state.differences.get(difference)
    if (!known) throw new Error(`no difference ${difference}`)
    known.settled = `${how}: ${reason}`
  },
}

/** What was on the machine by the record only was never there: what lies above its home is to be looked at again. */
function forgetWhatLay(state: State, moves: readonly Move[]): void {
  for (const move of moves.filter(isAtMachine)) {
    const { piece } = accountOf(state.ledger, move.piece)
    if (move.from === 'machine' && !belongsInToolbox(piece)) forgetLooksAbove(state, piece.step)
    else forgetLooks(state)
  }
}

/** A later count that agrees settles what an earlier one had left open. */
function settleByCount(state: State, container: number, piece: Piece['id'] | null, agrees: boolean): void {
  for (const known of state.differences.values()) {
    if (known.container !== container || known.piece !== piece || known.settled !== null) continue
    known.settled = agrees ? 'counted again, and it agrees' : 'counted again'
  }
}
