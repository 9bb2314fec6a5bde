import type { MeasureView } from '../../session/measure-views.ts'
import type { Judged } from '../../trade/measuring/judged.ts'
import type { Measurement } from '../../trade/measuring/measurement.ts'
import type { Verdict } from '../../trade/measuring/verdict.ts'
import { joined, sentence } from '../grammar.ts'
import { lackingText, resultText, VERDICTS } from './result-text.ts'

/** A measurement in one line: its results that are not in, and how many are. */
export function measureLine({ measure: { id, name, measurement }, judged }: MeasureView): string {
  const limits = limitsText(measurement)
  return `${id} ${name}: ${verdictLine(measurement, judged)}${limits === '' ? '' : ` (${limits})`}`
}

/** What readings come to, in one line. */
export function verdictLine(measurement: Measurement, { results }: Judged): string {
  const [only] = results
  if (only && results.length === 1) return resultText(only, measurement)
  const told = results.filter(({ verdict }) => verdict === 'out' || verdict === 'too-close')
  const counts = countsText(results.map(({ verdict }) => verdict))
  const all = [counts, ...told.slice(0, MOST_TOLD).map((result) => resultText(result, measurement))]
  return all.filter((part) => part !== '').join('; ') || NOTHING_YET
}

const NOTHING_YET = 'nothing came of it yet'

/** A measurement line by line: what it comes to, each result where there are several, and what is lacking. */
export function measureRows(view: MeasureView): string[] {
  const { measure, judged, again } = view
  const { id, name, measurement } = measure
  const limits = limitsText(measurement)
  const [only] = judged.results
  const isOne = only !== undefined && judged.results.length === 1
  const counts = countsText(judged.results.map(({ verdict }) => verdict))
  return [
    `${id}  ${name}: ${isOne ? resultText(only, measurement) : counts || NOTHING_YET}`,
    ...(isOne ? [] : judged.results.map((result) => `    ${resultText(result, measurement)}`)),
    ...(limits === '' ? [] : [`    limits: ${limits}`]),
    ...(again.length === 0 ? [] : [`    measured again since: ${again.join(', ')}`]),
    ...judged.lacking.map((lacking) => `    ${sentence(lackingText(lacking))}`),
  ]
}

/** The readings as they were typed, the instrument and the limits: `I1 0.14, I2 0.15; feeler 0.01; 0.13..0.17`. */
export function readingsText(measurement: Measurement): string {
  const { readings, instrument } = measurement
  const limits = limitsText(measurement)
  const taken = readings.map(({ at, height, axis, role, typed, spanMm }) =>
    [at, height, axis, role, typed, spanMm === undefined ? undefined : `over ${spanMm} mm`]
      .filter((part) => part !== undefined)
      .join(' '),
  )
  return [taken.join(', '), withoutQuotes(instrument?.typed ?? ''), limits]
    .filter((part) => part !== '')
    .join('; ')
}

const MOST_TOLD = 4

function limitsText({ limits }: Measurement): string {
  if (!limits) return ''
  return [withoutQuotes(limits.typed).replace(/^limits?:? (?=\d)/i, ''), limits.source]
    .filter((part) => part !== undefined)
    .join(', ')
}

/** Double quotes are for words to type: inches are told by their other sign. */
function withoutQuotes(typed: string): string {
  return typed.replace(/ ?"/g, ' in')
}

/** `1 OUT, 2 too close to call and 5 in`, the worst first. */
function countsText(verdicts: readonly (Verdict | null)[]): string {
  const order: Verdict[] = ['out', 'too-close', 'in']
  const counts = order.flatMap((verdict) => {
    const count = verdicts.filter((each) => each === verdict).length
    return count === 0 ? [] : [`${count} ${VERDICTS[verdict]}`]
  })
  const without = verdicts.filter((verdict) => verdict === null).length
  return joined([...counts, ...(without === 0 ? [] : [`${without} without a limit`])])
}
