import type { State } from '../../journal/state.ts'
import type { BlankLabel } from '../../label/label-content.ts'
import { jobLine } from './job-line.ts'

/** A label for a container that is yet to be. `code` are the nine digits of its label code. */
export function blankLabel(state: State, no: number, code: string): BlankLabel {
  return { kind: 'blank', name: `label ${no}`, code, job: jobLine(state) }
}
