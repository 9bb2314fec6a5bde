import type { State } from '../../journal/state.ts'
import type { ReplacingHeed } from '../../session/replacing-heeds.ts'
import { say } from '../cures.ts'
import { joined, sentence } from '../grammar.ts'
import { agree, countedPiece, liesText, pieceName } from '../pieces.ts'

/** What is worth a look because a new piece takes the place of an old one, in one line. */
export function replacingHeedText(state: State, heed: ReplacingHeed): string {
  switch (heed.heed) {
    case 'to-compare': {
      const { piece, old, features } = heed.view
      const names = features.map(({ feature }) => feature)
      return sentence(
        `hold ${agree(state, piece, 'it', 'them')} beside the old, ${old}, ${liesText(state, old)}: ${joined(names)}; then ${say(`compare ${piece}: alike`)}`,
      )
    }
    case 'goes-over': {
      const [first] = heed.riders
      const named = heed.riders.map(({ piece, count }) => countedPiece(state, piece, count))
      return sentence(
        `${joined(named)} still on the old one: ${say(`move over from ${first?.on} to ${heed.piece}`)} when moved`,
      )
    }
    case 'other-thread': {
      const { piece, old, oldSize } = heed
      return sentence(
        `the thread is not that of the old one: ${pieceName(state, piece)} (${piece}), and ${old} was ${oldSize}: is that right?`,
      )
    }
    case 'compare-rest':
      return sentence(
        `every feature is said: ${say(`compare ${heed.piece}: rest alike`)} ends it, and the old one goes to scrap`,
      )
    case 'wrong-one':
      return sentence(
        `it goes back: ${say(`send back ${heed.piece} because ...`)}; the old one stays until the right one is here`,
      )
    default:
      return heed satisfies never
  }
}
