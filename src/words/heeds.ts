import type { State } from '../journal/state.ts'
import type { Heed } from '../session/heeds.ts'
import { joined, sentence } from './grammar.ts'
import { jointQuestionText } from './joint-questions.ts'
import { measureLine } from './measurements/measure-text.ts'
import { lackingText } from './measurements/result-text.ts'
import { looseningName, passName } from './names.ts'
import { pieceName } from './pieces.ts'

/** What is worth a look because of what was just recorded, in one line. */
export function heedText(state: State, heed: Heed): string {
  switch (heed.heed) {
    case 'joint':
      return jointQuestionText(heed.tightening, heed.question)
    case 'loosening-open': {
      const { loosening, next } = heed
      return sentence(
        `${looseningName(state, loosening.id)} stands at ${passName(loosening, next.pass)}, ${next.through} of ${loosening.order.length} eased: were the rest eased as well?`,
      )
    }
    case 'look-alikes': {
      const { size, other, pieces } = heed
      const named = joined(pieces.map((id) => `${id} ${pieceName(state, id)}`))
      return sentence(
        `${size} and ${other} are both in this job: they go into each other's holes; ${other}: ${named}`,
      )
    }
    case 'measured':
      return sentence(measureLine(heed.measured))
    case 'measurement-lacks':
      return sentence(lackingText(heed.lacking))
    case 'untightened':
      return sentence(
        `the record has no tightening of ${joined(heed.pieces.map((id) => pieceName(state, id)))}: are they tight?`,
      )
    default:
      return heed satisfies never
  }
}
