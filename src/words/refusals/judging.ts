import { say } from '../cures.ts'
import { pieceName } from '../pieces.ts'
import { told } from '../told.ts'
import type { Tellers } from './tellers.ts'

/** Refusals about checks, verdicts and comparisons. */
export const judgingRefusals: Tellers<'nothing-to-compare'> = {
  'nothing-to-compare': (state, { piece }) =>
    told(
      `${pieceName(state, piece)} has no old one beside it to compare`,
      `${say(`judge ${piece} fit again because ...`)} says that it is right`,
    ),
}
