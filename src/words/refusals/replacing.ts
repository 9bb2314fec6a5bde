import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { overWords, say } from '../cures.ts'
import { isAre, joined } from '../grammar.ts'
import { heirOf } from '../lookups.ts'
import { agree, countedPiece, pieceName } from '../pieces.ts'
import { whereName } from '../places.ts'
import { told } from '../told.ts'
import type { Tellers } from './tellers.ts'

/** What concerns an old piece and the one that takes its place. */
export const replacingRefusals: Tellers<'not-compared' | 'carries-owed' | 'other-kind'> = {
  'not-compared': (state, { piece, fresh }) =>
    told(
      `${pieceName(state, piece)} (${piece}) ${agree(state, piece, 'is the old one, and stays', 'are the old ones, and stay')} until ${agree(state, fresh, 'the new one is', 'the new ones are')} held beside ${agree(state, piece, 'it', 'them')}: ${fresh} is not compared`,
      `lay them side by side, then ${say(`compare ${fresh}: alike`)}; to let ${agree(state, piece, 'it', 'them')} go all the same, ${say(`scrap ${piece} because ...`)}`,
    ),
  'carries-owed': (state, { piece, riders }) =>
    told(
      `${pieceName(state, piece)} (${piece}) cannot leave: ${joined(riders.map((each) => countedPiece(state, each.piece, each.count)))} ${isAre(riders.reduce((sum, { count }) => sum + count, 0))} still on it and ${isAre(riders.length) === 'is' && riders[0]?.count === 1 ? 'goes' : 'go'} back`,
      carriesCure(state, piece, riders[0]?.piece ?? piece),
      riders.map(
        (each) =>
          `${countedPiece(state, each.piece, each.count)} ${isAre(each.count)} ${whereName(state, each.on)}`,
      ),
    ),
  'other-kind': (state, { piece, named }) =>
    told(
      `asked for: ${pieceName(state, piece)}; ${named} is another kind of thing`,
      `look what is in your hand; if it takes that place all the same, ${say(`new ${piece} instead`)}`,
    ),
}

/** Over to the new one where there is one, else off. */
function carriesCure(state: State, piece: PieceId, rider: PieceId): string {
  const isOver = heirOf(state, piece) !== undefined
  const over = `${isOver ? 'move over' : 'take it off'} first: ${overWords(state, piece, rider)}`
  return `${over}, or ${say(`new ${rider} instead`)} when new ones are here`
}
