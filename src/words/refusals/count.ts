import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { explainWords, say } from '../cures.ts'
import { liesIn } from '../lookups.ts'
import { differenceName } from '../names.ts'
import { pieceName } from '../pieces.ts'
import { placeName } from '../places.ts'
import { told } from '../told.ts'
import type { RefusalOf, Tellers } from './tellers.ts'

/** What concerns a recount. The number expected is never said before the count is given. */
export const countRefusals: Tellers<'count-by-piece' | 'explains-nothing'> = {
  'count-by-piece': (state, { container, pieces }) =>
    pieces.length === 0
      ? told(
          `no number was given for ${placeName(state, `c${container}`)}`,
          `count, then ${say(`count ${container} = ...`)}`,
        )
      : told(
          `the count of ${placeName(state, `c${container}`)} needs a number for each kind of piece in it`,
          `count each kind, 0 when there is none: ${say(
            `count ${container}: ${kindsIn(state, container)
              .map((piece) => `${piece}=...`)
              .join(', ')}`,
          )}`,
          pieces.map((piece) => `${piece}, ${pieceName(state, piece)}`),
        ),
  'explains-nothing': (state, { difference, kind }) =>
    told(NOTHING[kind], explainWords(state, difference as `d${number}`), [
      differenceName(state, difference as `d${number}`),
    ]),
}

function kindsIn(state: State, container: number): PieceId[] {
  return [...new Set(liesIn(state, container).map(({ piece }) => piece))]
}

const NOTHING: Record<RefusalOf<'explains-nothing'>['kind'], string> = {
  missing: 'nothing is missing there: more was counted than the record has',
  'unknown-piece': 'no unknown piece explains that: fewer were counted than the record has',
  moved: 'that is another piece, which leaves this count as wrong as it was',
}
