import { measuresOfStep } from '../../session/measure-views.ts'
import { measureLine } from '../../words/measurements/measure-text.ts'
import type { Line } from '../text/line.ts'
import { bulleted, indented } from './rows.ts'
import type { State } from './scene.ts'

/** What was measured for the step, the latest of each, with its verdicts. */
export function measuredRows(state: State, no: number, width: number): Line[] {
  const rows = measuresOfStep(state, no).flatMap((measured) => bulleted(measureLine(measured), width))
  return rows.length === 0 ? [] : [...rows, ...indented('The service manual decides.', width)]
}
