import type { State } from '../../journal/state.ts'
import type { OutingHeed } from '../../session/outing-heeds.ts'
import { say } from '../cures.ts'
import { isAre, joined, sentence } from '../grammar.ts'
import { agree, countedPiece, pieceName } from '../pieces.ts'
import { awayPieces, outingStanding } from './out-words.ts'
import { tookOutWords } from './took-out-words.ts'

/** What is worth a look when pieces go out or come back, in one line. */
export function outingHeedText(state: State, heed: OutingHeed): string {
  switch (heed.heed) {
    case 'goes-along': {
      const { riders } = heed.view
      const names = riders.map(({ piece, count, on }) => `${countedPiece(state, piece, count)} (on ${on})`)
      const all = riders.reduce((sum, { count }) => sum + count, 0)
      return sentence(`with it ${all === 1 ? 'goes' : 'go'} ${joined(names)}`)
    }
    case 'taken-out-there':
      return sentence(`what was taken out of it there? Look, then ${tookOutWords(heed.outing.id)}`)
    case 'still-away': {
      const { pieces } = heed.outing
      const all = pieces.reduce((sum, { away }) => sum + away, 0)
      return sentence(
        `${awayPieces(state, heed.outing)} ${isAre(all)} still out, ${outingStanding(state, heed.outing)}`,
      )
    }
    case 'expected':
      return sentence(`expected of it: ${heed.outing.expects}. See that it is so`)
    case 'given-back':
      return sentence(
        `the record of ${heed.outing.to} still has it: say there ${say('send back PIECE because ...')}`,
      )
    case 'still-judged': {
      const { piece } = heed
      return sentence(
        `${pieceName(state, piece)} ${agree(state, piece, 'is', 'are')} still to be machined by the verdict: ${say(`judge ${piece} fit again because ...`)} when ${agree(state, piece, 'it is', 'they are')} right`,
      )
    }
    default:
      return heed satisfies never
  }
}
