import type { MistakeClass } from './classes.ts'
import { LEAVINGS, type Leaving } from './leavings.ts'
import { ofOmissions } from './shares.ts'

/** Three of four are not said either; one is ticked all the same: nobody counted that, it is a choice of this program. */
const NOT_SAID = 0.75

/** Left out and not said to be done: what the record then lacks. */
export const OMISSIONS: readonly MistakeClass[] = [
  ...LEAVINGS.map(leftOut),
  {
    name: 'new single-use piece not got',
    ...ofOmissions('spacers, washers, seals missing', 0.2),
    going: 'left out',
    // The old one would go back.
    at(acts, place) {
      const first = acts[place]
      const { thing } = first ?? {}
      if (first?.doing !== 'supply' || !thing) return null
      const cure = acts.slice(place, place + 2)
      return {
        acts: 2,
        says: () => [],
        cure,
        subjects: (known) => [known.piece(thing)],
      }
    },
  },
]

function leftOut({ what, made, ...share }: Leaving): MistakeClass {
  return {
    ...share,
    name: / not /.test(what) ? what : `${what} left out`,
    weight: share.weight * NOT_SAID,
    going: 'left out',
    at: made,
  }
}
