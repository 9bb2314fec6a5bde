import { judge } from '../../trade/measuring/judge.ts'
import { verdictLine } from '../../words/measurements/measure-text.ts'
import type { Command } from '../act.ts'
import { type Line, line, strong } from '../text/line.ts'

type Measure = Extract<Command, { do: 'measure' }>

/** What readings come to and their verdict, while they are typed. */
export function measureReading({ name, measurement }: Measure): Line[] {
  return [line(strong(`${name}: `), verdictLine(measurement, judge(measurement)))]
}
