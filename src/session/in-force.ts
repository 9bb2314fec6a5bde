import type { Session } from './session.ts'
import type { Entry } from './stored-entry.ts'

/** The entries that the state follows from, oldest first: without those taken back, and without the taking back. */
export function entriesInForce(session: Session): Entry[] {
  const { inForce, seq } = session.state
  const numbers = new Set(inForce)
  return session.entries().filter(({ n, type }) => numbers.has(n) || (type === 'labels-dealt' && n <= seq))
}
