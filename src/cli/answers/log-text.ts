import type { Session } from '../../session/session.ts'
import { isTakenBack } from '../../session/views.ts'
import { entryText } from '../../words/entries.ts'
import { whenText } from './when.ts'

const USUAL = 20

/** The last entries of the journal, oldest first, with those that were taken back marked. */
export function logAnswer(session: Session, last: number | null): { text: string[]; answer: unknown } {
  const entries = session.entries().slice(-(last ?? USUAL))
  const inForce = new Set(session.state.inForce)
  const text = entries.map((entry) => {
    const isUndone = isTakenBack(inForce, entry)
    const by = entry.by === undefined ? '' : ` [${entry.by}]`
    const told = entryText(session.state, entry)
    return `${String(entry.n).padStart(4)}  ${whenText(entry.at)}${by}  ${isUndone ? `(undone) ${told}` : told}`
  })
  return { text, answer: entries }
}
