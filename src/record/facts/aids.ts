import type { Entry } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { Account, Move } from '../../ledger/account.ts'
import { belongsInToolbox } from '../../ledger/piece.ts'

/** An aid or a tool, and every move that it made. */
export interface AidRecord {
  account: Account
  ways: { move: Move; entry: Entry }[]
}

/** Every aid and tool that left the toolbox. */
export function aidsOf({ ledger }: State, entries: readonly Entry[]): AidRecord[] {
  return [...ledger.accounts.values()]
    .filter(({ piece }) => belongsInToolbox(piece))
    .map((account) => ({
      account,
      ways: entries.flatMap((entry) =>
        'moves' in entry
          ? entry.moves.filter(({ piece }) => piece === account.piece.id).map((move) => ({ move, entry }))
          : [],
      ),
    }))
}
