import { isMatched } from '../../ledger/piece.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { areMates } from './mates.ts'
import { given, knownPiece, refuse } from './refuse.ts'

/**
 * A piece gets another name, and its mates with it, so that they stay one set. Refused where a position would then have
 * two pieces of one name.
 */
export function renamePiece(
  state: State,
  { piece, name: wanted }: Extract<Command, { do: 'rename-piece' }>,
): EntryBodyOf<'renamed'> {
  const account = knownPiece(state, piece)
  const name = given(wanted, 'name')
  const all = [...state.ledger.accounts.values()]
  const mates = isMatched(account.piece) ? all.filter((other) => areMates(account, other)) : [account]
  for (const other of all.filter((each) => !mates.includes(each))) {
    const isSame = mates.some(
      ({ home }) =>
        home.position !== undefined && home.position === other.home.position && home.at === other.home.at,
    )
    if (isSame && other.piece.name === name) refuse({ code: 'name-taken', name, piece: other.piece.id })
  }
  return { type: 'renamed', mates: mates.map((mate) => mate.piece.id), name }
}
