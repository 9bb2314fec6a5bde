import { readLine } from '../../../src/lines/read-line.ts'
import { workOut } from '../../../src/session/work-out.ts'
import { sumText } from '../../../src/words/sum-text.ts'
import { nothing } from '../../lines/told.ts'

/** What a line that asks for a sum is answered with. */
export function worked(line: string): string[] {
  const reading = readLine(line, nothing)
  if (reading.kind !== 'ask' || reading.ask.ask !== 'sum')
    throw new Error(`no sum: ${JSON.stringify(reading)}`)
  return sumText(nothing, workOut(nothing, reading.ask.sum))
}
