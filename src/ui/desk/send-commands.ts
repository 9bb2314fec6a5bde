import type { Session } from '../../session/session.ts'
import type { Entry } from '../../session/stored-entry.ts'
import type { Command } from '../act.ts'
import { type Answer, outcomeAnswer } from '../answer.ts'
import type { Typed } from '../typed/meaning.ts'

/** What came of several commands. */
export interface SentCommands {
  /** How many were recorded. */
  done: number
  isAll: boolean
  /** To the last one that was sent; null where there was none. */
  answer: Answer | null
}

/** Sends commands one after the other, until one is not taken. `onRecorded` is told of each that is, at once. */
export function sendCommands(
  session: Session,
  commands: readonly Command[],
  onRecorded: (type: Entry['type']) => void,
): SentCommands {
  const sent: SentCommands = { done: 0, isAll: true, answer: null }
  // A label to be written is not lost behind the next item of the line.
  const earlier: string[] = []
  const isMany = commands.length > MOST_TOLD
  for (const command of commands) {
    const outcome = session.send(command)
    const own = outcomeAnswer(session, outcome)
    const count = isMany && sent.done > 0 ? [`${sent.done} of ${commands.length} entries before it`] : []
    sent.answer = withEarlier(own, [...earlier, ...count])
    if (outcome.kind !== 'recorded') return { ...sent, isAll: false }
    sent.done += 1
    onRecorded(outcome.entry.type)
    const { lines, what } = own.told
    earlier.push(...lines, ...(isMany ? [] : [`before it: ${what}`]))
  }
  return sent
}

/** Of more commands than that, as of a range of pictures, the number is told and not each. */
const MOST_TOLD = 4

/** The words of what is not recorded yet: the items of a line, where each stands between semicolons of its own. */
export function restOf(typed: Typed, done: number, all: number): Typed {
  if (done === 0) return typed
  const parts = (typed.before + typed.after).split(';')
  return { before: parts.length === all ? parts.slice(done).join(';').trim() : '', after: '' }
}

function withEarlier(answer: Answer, earlier: readonly string[]): Answer {
  const { told } = answer
  return { ...answer, told: { ...told, lines: [...earlier, ...told.lines] } }
}
