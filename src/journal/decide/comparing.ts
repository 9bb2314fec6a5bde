import type { Move } from '../../ledger/account.ts'
import { withinReach } from '../../plan/contents.ts'
import { lastSaid } from '../../plan/judging/judging.ts'
import type { ComparedFeature, ComparisonFacts } from '../../plan/judging/judging-facts.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { scrapMoves } from './fitting.ts'
import { refuseOwedRiders } from './leaving.ts'
import { given, knownPiece, lawful, refuse } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/**
 * A new piece is held beside the old one, feature by feature. It is right once the rest, too, was said to be; then the
 * old one leaves in the same act.
 */
export function compare(state: State, command: Of<'compare'>): EntryBodyOf<'compared'> {
  const { piece, rest, keep } = command
  const account = knownPiece(state, piece)
  const comparison = state.comparisons.get(piece) ?? refuse({ code: 'nothing-to-compare', piece })
  if (account.should === 0) refuse({ code: 'not-for-home', piece })
  const { old, order } = comparison
  const features = featuresSaid(command)
  if (features.length === 0 && rest === undefined) given(undefined, 'text')
  const isWrong =
    rest === 'wrong' || lastSaid(comparison.features, features).some(({ how }) => how === 'wrong')
  if (comparison.verdict === 'right' && !isWrong) refuse({ code: 'already', what: 'compared', id: piece })
  const isHere = withinReach(state, account).length > 0 || account.at.has('machine')
  if (!isHere) refuse({ code: 'not-within-reach', piece, wanted: 1, there: 0, lies: [] })
  const verdict = isWrong ? 'wrong' : rest === undefined ? 'due' : 'right'
  const leaves = verdict === 'right' && !keep
  return {
    type: 'compared',
    piece,
    old,
    features,
    verdict,
    moves: leaves ? oldLeaves(state, old) : [],
    order,
  }
}

/** What was said of features by name, and of the rest: nothing more is said of it than that. */
function featuresSaid({ features, rest, says }: Of<'compare'>): ComparedFeature[] {
  if (rest === undefined) return features
  if (rest === 'wrong') return [...features, { feature: 'the whole', how: rest, says: given(says, 'reason') }]
  return [...features, { feature: features.length === 0 ? 'all' : 'the rest', how: rest, says }]
}

function oldLeaves(state: State, old: ComparisonFacts['old']): Move[] {
  refuseOwedRiders(state, old)
  return lawful(state, scrapMoves(state, knownPiece(state, old)))
}
