import { codeOf } from '../../session/scan.ts'
import type { Session } from '../../session/session.ts'
import { markerText } from '../../words/label-text/marker-text.ts'
import type { Success } from '../result.ts'

/** What to write on a container with a marker; null when there is no such container. */
export function markerAnswer({ state }: Session, no: number): Pick<Success, 'text' | 'answer'> | null {
  if (!state.containers.has(no) && !state.blanks.has(no)) return null
  const text = markerText(state, no, codeOf(state, no))
  return { text, answer: { container: no, text } }
}
