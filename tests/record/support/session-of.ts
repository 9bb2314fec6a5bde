import type { Entry } from '../../../src/journal/entry.ts'
import { Session } from '../../../src/session/session.ts'

/** A session to read entries that stand on no disk. */
export function sessionOf(entries: readonly Entry[]): Session {
  return new Session({
    path: 'nowhere',
    entries: () => entries,
    problem: null,
    setAside: [],
    readOnly: { kind: 'asked' },
    refresh: () => [],
    append: () => {
      throw new Error('only to be read')
    },
    watch: () => () => {},
  })
}
