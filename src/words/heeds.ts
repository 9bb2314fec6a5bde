import type { State } from '../journal/state.ts'
import type { Heed } from '../session/heeds.ts'
import { consumableHeedText } from './consumables/heed-words.ts'
import { say } from './cures.ts'
import { joined, sentence } from './grammar.ts'
import { jointQuestionText, wrenchText } from './joint-questions.ts'
import { judgingHeedText } from './judging/heed-words.ts'
import { replacingHeedText } from './judging/replacing-heed-words.ts'
import { offAgainText } from './leftovers.ts'
import { measureLine } from './measurements/measure-text.ts'
import { lackingText } from './measurements/result-text.ts'
import { missingText } from './missing-text.ts'
import { fastenerName, looseningName, passName } from './names.ts'
import { pieceName } from './pieces.ts'
import { sparesText } from './spares-text.ts'
import { orderHeedText } from './waiting/order-heed-words.ts'
import { outingHeedText } from './waiting/outing-heed-words.ts'

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
      return `${sentence(measureLine(heed.measured))}${heed.measured.judged.results.length > 0 ? ' The service manual decides.' : ''}`
    case 'wrench':
      return sentence(wrenchText(heed.setting))
    case 'pass-through':
      return sentence(passThroughText(heed))
    case 'measurement-lacks':
      return sentence(lackingText(heed.lacking))
    case 'untightened':
      return sentence(
        `the record has no tightening of ${joined(heed.pieces.map((id) => pieceName(state, id)))}: are they tight?`,
      )
    case 'spares':
      return sparesText(state, heed.spares).join(' ')
    case 'missing':
      return sentence(`${missingText(state, heed.missing).what}: ${say('due')} shows each way out`)
    case 'off-again':
      return sentence(offAgainText(state, heed.off))
    case 'repeated':
      return sentence(repeatedText(state, heed))
    case 'not-put-on':
    case 'fitted-late':
      return consumableHeedText(state, heed)
    case 'order-unneeded':
    case 'kit-short':
    case 'over-ordered':
    case 'too-many':
      return orderHeedText(state, heed)
    case 'to-compare':
    case 'goes-over':
    case 'other-thread':
    case 'compare-rest':
    case 'wrong-one':
      return replacingHeedText(state, heed)
    case 'goes-along':
    case 'taken-out-there':
    case 'still-away':
    case 'expected':
    case 'given-back':
    case 'still-judged':
      return outingHeedText(state, heed)
    default:
      return judgingHeedText(state, heed)
  }
}

/** The wrench, or the work, is another in the next pass: that is said when the pass before is through. */
function passThroughText({ joint, pass, next }: Extract<Heed, { heed: 'pass-through' }>): string {
  if (next)
    return `pass ${pass + 1} is through: now ${passName(joint, next.pass)}, from ${fastenerName(next.fastener)}`
  return 'piece' in joint
    ? `all passes of ${joint.id} are through`
    : `all ${joint.order.length} are eased: take them out`
}

/** Looked at from the other end, a slip that was made at each of them does not look right by habit. */
function repeatedText(state: State, { step, pieces }: Extract<Heed, { heed: 'repeated' }>): string {
  const [first = 'p0', last = 'p0'] = [pieces[0], pieces.at(-1)]
  return `one person put on all ${pieces.length}, from ${pieceName(state, first)} to ${pieceName(state, last)}: a slip would be the same at each. Look again at some of them from the last to the first; ${say(`step ${step} critical`)} asks for a second look at every one`
}
