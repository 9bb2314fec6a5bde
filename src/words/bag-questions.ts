import type { Question } from '../trade/bag-line/bag-item.ts'
import type { Drive } from '../trade/drive.ts'
import type { Thread } from '../trade/thread.ts'
import { say } from './cures.ts'
import { isAre, joined, sentence } from './grammar.ts'

/** How the trade writes a thread and a drive. */
export interface TradeNames {
  thread(thread: Thread): string
  drive(drive: Drive): string
}

/** What a bag line leaves open, as a question that nothing waits for. */
export function questionText(question: Question, names: TradeNames): string {
  return sentence(questionWords(question, names))
}

function questionWords(question: Question, names: TradeNames): string {
  switch (question.code) {
    case 'pitch-assumed': {
      const { size, pitchMm } = question.thread
      return `no pitch was written: ${size} is taken with its coarse pitch, ${pitchMm} mm`
    }
    case 'pitch-not-standard': {
      const { thread, standardMm } = question
      return `${names.thread(thread)}: a pitch of ${thread.pitchMm} mm is not in the standard for ${thread.size}, which has ${joined(standardMm.map(String), 'or')} mm: is it right?`
    }
    case 'usually-single-use':
      return `a ${question.noun} is usually not fitted again: if so, write ${say('single-use')} behind it`
    case 'count-large':
      return `${question.count} is a large count: is it right?`
    case 'count-assumed':
      return `no count was written: ${question.count} is taken`
    case 'broken-or-missing':
      return `${question.broken} broken and ${question.missing} not found: are these the same ones?`
    case 'which-missing':
      return `${question.missing} of ${joined(question.positions)} ${isAre(question.missing)} missing: which?`
    case 'drive-or-position':
      return `${question.typed} was read as the drive: if it is the position, write ${say(`@${question.typed}`)}`
    case 'drive-unusual':
    case 'unit-mix': {
      const { thread, drive, usual, elsewhere } = question
      const how = question.code === 'unit-mix' ? 'inches and millimetres are mixed' : 'not usual'
      const known = [
        ...inSeries(`${thread.size} has`, usual, (each) => names.drive(each.drive), 'or'),
        ...inSeries(`${names.drive(drive)} is for`, elsewhere, ({ size }) => size, 'and'),
      ]
      return `${names.drive(drive)} on ${names.thread(thread)}: ${[how, ...known].join('; ')}: is it right?`
    }
    default:
      return question satisfies never
  }
}

/** What the common series have, each thing with the first series that has it: `M8 has hex 13 (ISO 4014 hexagon)`. */
function inSeries<T extends { inShort: string }>(
  begin: string,
  all: readonly T[],
  nameOf: (each: T) => string,
  word: 'and' | 'or',
): string[] {
  if (all.length === 0) return []
  const first = new Map(all.toReversed().map((each) => [nameOf(each), each.inShort]))
  const inOrder = [...new Set(all.map(nameOf))]
  return [
    `${begin} ${joined(
      inOrder.map((name) => `${name} (${first.get(name)})`),
      word,
    )}`,
  ]
}
