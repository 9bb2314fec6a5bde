import type { Account } from '../../ledger/account.ts'
import type { State } from '../state.ts'

/**
 * Whether two pieces are of one kind at one place of the machine, as the caps of a set or single pieces of one name.
 * Sets of the same name at two places, as inlet and exhaust, are two sets; and a home lies in one step, in which the
 * piece that takes it goes back.
 */
export function areMates(a: Account, b: Account): boolean {
  return (
    b.home.at === a.home.at &&
    b.piece.set === a.piece.set &&
    b.piece.name === a.piece.name &&
    b.piece.step === a.piece.step
  )
}

/** The mates of a piece that belong on the machine now, itself among them. */
export function matesOf(state: State, account: Account): Account[] {
  return [...state.ledger.accounts.values()].filter((other) => other.should > 0 && areMates(account, other))
}
