import type { State } from '../../journal/state.ts'
import type { FlagLabel } from '../../label/label-content.ts'
import type { Account } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { singular } from '../grammar.ts'
import { jobLine } from './job-line.ts'
import { oneLine, oneLines } from './one-line.ts'

/** The ends of the connection that a piece is an end of, in the order in which they were written; the piece alone when it has no other. */
export function endsOfConnection(state: State, id: PieceId): PieceId[] {
  const own = state.ledger.accounts.get(id)
  if (own?.piece.set === undefined) return own ? [id] : []
  return [...state.ledger.accounts.values()]
    .filter(({ piece, home, should }) => {
      const isEnd = piece.kind === own.piece.kind && piece.set === own.piece.set && home.at === own.home.at
      return isEnd && (should > 0 || piece.id === id)
    })
    .map(({ piece }) => piece.id)
}

/**
 * A flag for each end of one connection, lettered in the order given: each names its own port, and the others.
 * `code` are the nine digits that each carries.
 */
export function flagLabels(state: State, ends: readonly PieceId[], code: string): FlagLabel[] {
  const accounts = ends.flatMap((id) => state.ledger.accounts.get(id) ?? [])
  return accounts.map((account, index) => {
    const end = letters(index)
    const what = oneLine(singular(account.piece.name))
    return {
      kind: 'flag',
      name: `flag ${end} of ${what}`,
      code,
      end,
      what,
      own: oneLine(portOf(account)),
      others: oneLines(accounts.filter((other) => other !== account).map(portOf)),
      job: jobLine(state),
    }
  })
}

function portOf({ home }: Account): string {
  return home.position ?? home.at
}

/** A to Z, then AA: a harness may have many ends. */
function letters(index: number): string {
  const first = Math.floor(index / 26)
  const letter = String.fromCharCode(65 + (index % 26))
  return first === 0 ? letter : letters(first - 1) + letter
}
