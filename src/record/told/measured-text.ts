import { sentence } from '../../words/grammar.ts'
import { readingsText } from '../../words/measurements/measure-text.ts'
import { lackingText, resultText } from '../../words/measurements/result-text.ts'
import type { MeasureRecord } from '../facts/steps.ts'
import { type Line, line } from './line.ts'
import { dated, type Telling } from './telling.ts'

/** Measurements as they were taken: the readings, what they come to, and what took their place since. */
export function measuredText(telling: Telling, measures: readonly MeasureRecord[], indent = 4): Line[] {
  return measures.flatMap(({ measure, judged, replacedBy, again, entry }) => {
    const { id, name, measurement } = measure
    const text = `${id}, ${name}: ${readingsText(measurement)}`
    const inside = indent + 2
    return [
      entry === null ? line(text, indent) : dated(telling, entry, text, indent),
      ...judged.results.map((result) => line(resultText(result, measurement), inside)),
      ...(again.length > 0 && replacedBy === null
        ? [line(`measured again since: ${again.join(', ')}`, inside)]
        : []),
      ...(replacedBy === null
        ? judged.lacking.map((lacking) => line(sentence(lackingText(lacking)), inside))
        : [line(`measured again since, as ${replacedBy}`, inside)]),
    ]
  })
}
