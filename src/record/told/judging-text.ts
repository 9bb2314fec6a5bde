import { joined } from '../../words/grammar.ts'
import { readingsText } from '../../words/measurements/measure-text.ts'
import { pieceName } from '../../words/pieces.ts'
import type { JudgingRecord } from '../facts/judging.ts'
import { type Line, line } from './line.ts'
import { history, type Telling } from './telling.ts'

/** What was found, asked or decided, with the reading and the picture that it rests on. */
export function judgingText(telling: Telling, { entry, measure, picture, saidAnew }: JudgingRecord): Line[] {
  const { state } = telling
  const ground = [
    ...(measure === null
      ? []
      : [`measured: ${measure.id}, ${measure.name}: ${readingsText(measure.measurement)}`]),
    ...(picture === null ? [] : [`picture: ${picture.id}, ${picture.file}`]),
    ...(saidAnew.length === 0
      ? []
      : [`judged anew since: ${joined(saidAnew.map((piece) => pieceName(state, piece)))}`]),
  ]
  return [history(telling, entry), ...ground.map((text) => line(text, 6))]
}
