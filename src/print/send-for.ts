import { groupedCode } from '../label/code.ts'
import { codeOf } from '../session/scan.ts'
import type { Session } from '../session/session.ts'
import type { Entry } from '../session/stored-entry.ts'
import { refusalText } from '../words/refusals.ts'
import { type NotMade, notMade } from './made.ts'

type Command = Parameters<Session['send']>[0]

/**
 * Records what an errand needs. Throws what the disk throws, for then there is nothing to print either.
 */
export function sendFor(
  session: Session,
  commands: readonly Command[],
): { ok: true; entries: Entry[] } | NotMade {
  const entries: Entry[] = []
  for (const command of commands) {
    const outcome = session.send(command)
    if (outcome.kind === 'not-recorded') throw outcome.error
    if (outcome.kind === 'refused') {
      return refusedBy(session.state, outcome.refusal, entries)
    }
    entries.push(outcome.entry)
  }
  return { ok: true, entries }
}

/** Nothing was drawn, because the record does not allow it. */
export function refusedBy(
  state: Session['state'],
  refusal: Parameters<typeof refusalText>[1],
  entries: readonly Entry[] = [],
): NotMade {
  const told = refusalText(state, refusal, (no) => groupedCode(codeOf(state, no)))
  return notMade({ code: 'command-refused', refused: refusal.code, told }, entries)
}
