import { judge } from '../../trade/measuring/judge.ts'
import { verdictLine } from '../../words/measurements/measure-text.ts'
import { NOT_A_SPECIFICATION } from '../../words/sums/figures.ts'
import type { Command } from '../act.ts'
import { type Line, line, strong } from '../text/line.ts'

type Measure = Extract<Command, { do: 'measure' }>

/** What readings come to and their verdict, while they are typed. */
export function measureReading({ name, measurement }: Measure): Line[] {
  const judged = judge(measurement)
  const reading = line(strong(`${name}: `), verdictLine(measurement, judged))
  return judged.results.length === 0 ? [reading] : [reading, line(NOT_A_SPECIFICATION)]
}
