import type { Move } from '../../ledger/account.ts'
import { placesOf } from '../../ledger/ledger.ts'
import { carrierOf } from '../../ledger/place.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { knownPiece, lawful, refuse } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** A new piece is held beside the old one: where it is right, the old one leaves in the same act. */
export function compare(
  state: State,
  { piece, features, rest, says, keep }: Of<'compare'>,
): EntryBodyOf<'compared'> {
  knownPiece(state, piece)
  const comparison = state.comparisons.get(piece) ?? refuse({ code: 'nothing-to-compare', piece })
  const { old } = comparison
  const isWrong = rest === 'wrong' || features.some(({ how }) => how === 'wrong')
  const named = rest === undefined ? features : [...features, { feature: 'the rest', how: rest, says }]
  const verdict = isWrong ? 'wrong' : rest === undefined ? 'due' : 'right'
  return {
    type: 'compared',
    piece,
    old,
    features: named,
    verdict,
    moves: verdict === 'right' && !keep ? lawful(state, toScrap(state, old)) : [],
  }
}

function toScrap(state: State, old: Of<'compare'>['piece']): Move[] {
  return placesOf(state.ledger, old)
    .filter(
      ({ place }) =>
        place !== 'machine' && place !== 'scrap' && place !== 'lost' && carrierOf(place) === null,
    )
    .map(({ place, count }) => ({ piece: old, count, from: place, to: 'scrap' }))
}
