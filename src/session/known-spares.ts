import type { State } from '../journal/state.ts'
import { balance } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'

/** What is known to be surplus, such as what a kit held beyond what its homes lacked. */
export interface KnownSpare {
  piece: PieceId
  count: number
}

/** All that is declared spare, in the order of the record: what lies there beside the machine when it is together. */
export function knownSpares({ ledger }: State): KnownSpare[] {
  return [...ledger.accounts.values()].flatMap(({ piece: { id } }) => {
    const count = balance(ledger, id, 'spare')
    return count > 0 ? [{ piece: id, count }] : []
  })
}
