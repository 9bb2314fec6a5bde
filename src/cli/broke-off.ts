import type { Session } from '../session/session.ts'
import type { Entry } from '../session/stored-entry.ts'
import { brokenOff } from '../session/views.ts'

/** What is known of the time since the last entry. */
export interface Meanwhile {
  now: Date
  /** When this computer was started. */
  booted: Date
  /** Whether a program has the job open in which that work may go on right now. */
  othersHere: boolean
}

/**
 * More than anybody needs from one fastener to the next, or to say that work stops. On the command line each line is a
 * program of its own, so nothing else tells work that goes on from work that broke off. A choice of this program.
 */
const LONGEST_PAUSE_MS = 30 * 60_000

/**
 * Notes that work broke off, where the record ends in the middle of a pass and whoever comes now is not who just turned the
 * last fastener: too long ago, the computer was started since, or a line was left half written. Answers the entry, null where
 * none was needed, or where the disk would not take it: then the next line notes it.
 */
export function noteBrokenOff(session: Session, meanwhile: Meanwhile): Entry | null {
  if (meanwhile.othersHere || !brokenOff(session.state) || goesOn(session, meanwhile)) return null
  const outcome = session.send({ do: 'stop', abrupt: true, note: '' })
  return outcome.kind === 'recorded' ? outcome.entry : null
}

function goesOn({ store }: Session, { now, booted }: Meanwhile): boolean {
  const last = Date.parse(store.entries().at(-1)?.at ?? '')
  // A clock that was put back tells nothing of how long it was.
  const pause = Math.abs(now.getTime() - last)
  return store.setAside.length === 0 && booted.getTime() <= last && pause <= LONGEST_PAUSE_MS
}
