import type { Choice } from '../page.ts'

/** Putting something that is off already into a container: its words go into the line around the piece. */
export function putInto(container: number): Choice {
  return {
    says: 'put something into it',
    act: {
      do: 'write',
      before: 'move ',
      after: ` into ${container}`,
      asks: 'Type what goes into it, as: 4 head bolts',
    },
  }
}
