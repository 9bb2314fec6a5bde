import type { Act } from '../job/act.ts'
import type { Known } from '../job/known.ts'
import { act } from '../job/strip-acts.ts'
import type { Made, MistakeClass } from './classes.ts'

/** Left out and not said either: what the record then lacks. */
export const OMISSIONS: readonly MistakeClass[] = [
  {
    name: 'fastener left out',
    group: 'omission',
    weight: 11,
    from: 'job.md: fasteners undone or incomplete 22 %',
    going: 'left out',
    at(acts, place) {
      const fit = acts[place]
      const { thing } = fit ?? {}
      if (fit?.doing !== 'fit' || thing?.kind !== 'lot' || thing.at !== null || thing.count < 2) return null
      return {
        acts: 1,
        says: () => [`fit ${thing.count - 1} ${thing.name}`],
        cure: [act('fit', fit.step, () => `fit 1 ${thing.name}`, thing)],
        subjects: (known) => [known.piece(thing)],
      }
    },
  },
  leftOut(
    'hose end not put back',
    10,
    (each) => each.doing === 'fit' && each.thing?.kind === 'hose',
    ({ piece }) => piece,
  ),
]

function leftOut(
  name: string,
  weight: number,
  isOne: (act: Act) => boolean,
  subject: (known: Known) => unknown,
): MistakeClass {
  void subject
  return {
    name,
    group: 'omission',
    weight,
    from: '',
    going: 'left out',
    at(acts, place): Made | null {
      const one = acts[place]
      if (!one?.thing || !isOne(one)) return null
      const { thing, at } = one
      return { acts: 1, says: () => [], cure: [one], subjects: (known) => [known.piece(thing, at)] }
    },
  }
}
