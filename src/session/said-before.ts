import type { Session } from './session.ts'
import type { Entry } from './stored-entry.ts'

/** What words were given for: why a bolt was or was not turned, what one does that takes no torque, how it was put right. */
export type SaidFor = 'turned' | 'not-turned' | 'no-torque' | 'settled' | 'reason'

const MOST = 4

/** Words given for the same before in this job, the newest first; of reasons any, for they are told alike. */
export function saidBefore(session: Session, what: SaidFor): string[] {
  const said = new Set<string>()
  for (const entry of [...session.entries()].reverse()) {
    const words = wordsOf(entry, what)
    if (words) said.add(words)
    if (said.size === MOST) break
  }
  return [...said]
}

function wordsOf(entry: Entry, what: SaidFor): string | undefined {
  switch (what) {
    case 'turned':
    case 'not-turned':
      return entry.type === 'angle-settled' && entry.turned === (what === 'turned') ? entry.reason : undefined
    case 'no-torque':
      return entry.type === 'torque-missed' ? entry.says : undefined
    case 'settled':
      return entry.type === 'settled' ? entry.how : undefined
    case 'reason':
      return 'reason' in entry && entry.type !== 'angle-settled' ? entry.reason : undefined
    default:
      return what satisfies never
  }
}
