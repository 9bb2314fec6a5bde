import { labelCode } from '../../../src/label/code.ts'
import type { Act } from '../job/act.ts'
import { JOB } from '../job/build-acts.ts'
import { act } from '../job/strip-acts.ts'
import type { Lot, Machine } from '../machines/machine.ts'
import type { MistakeClass } from './classes.ts'
import { isStillOff, subjectsOf } from './leavings.ts'
import { refusedOr } from './refused-or.ts'
import { ofGroup } from './shares.ts'

const OTHER_JOB = 2

/** The wrong piece in the hand, from the wrong bag, or one that is no good any more. */
export const WRONG_PARTS: readonly MistakeClass[] = [
  {
    name: 'bag of another step',
    ...ofGroup('wrong part', 0.25),
    going: 'wrong',
    at(acts, place, machine) {
      const right = acts[place]
      const other = right?.doing === 'scan' ? lotElsewhere(acts, place, machine) : undefined
      if (!right || !other) return null
      return {
        acts: 1,
        says: (known) => {
          const bag = known.containers.get(other) ?? 0
          return [labelCode(JOB, bag), `fit bag ${bag}`]
        },
        cure: [],
        about: other,
        subjects: (known) => subjectsOf(right, known),
        stops: (result) => refusedOr(result, ({ verdict }) => (verdict === 'fits-now' ? null : verdict)),
      }
    },
  },
  {
    name: 'piece of another step',
    ...ofGroup('wrong part', 0.15),
    going: 'wrong',
    at(acts, place, machine) {
      const right = acts[place]
      const other = right?.doing === 'fit' ? lotElsewhere(acts, place, machine) : undefined
      if (!right || !other) return null
      return {
        acts: 1,
        says: (known) => [`fit 1 ${known.piece(other)} in step ${right.step}`],
        cure: [right],
        about: other,
        subjects: (known) => [...subjectsOf(right, known), known.piece(other)],
      }
    },
  },
  {
    name: 'bag of another job',
    ...ofGroup('wrong part', 0.2),
    going: 'wrong',
    at(acts, place) {
      const right = acts[place]
      const { thing } = right ?? {}
      if (right?.doing !== 'scan' || !thing) return null
      return {
        acts: 1,
        says: ({ containers }) => [labelCode(OTHER_JOB, containers.get(thing) ?? 0)],
        cure: [],
        subjects: (known) => subjectsOf(right, known),
        stops: (result) => refusedOr(result, ({ kind }) => (kind === 'other-job' ? kind : null)),
      }
    },
  },
  {
    name: 'old single-use piece in place of the new one',
    ...ofGroup('wrong part', 0.2),
    going: 'wrong',
    at(acts, place) {
      const right = acts[place]
      const { thing } = right ?? {}
      if (right?.doing !== 'fit' || !thing || !('isSingleUse' in thing) || !thing.isSingleUse) return null
      return {
        acts: 1,
        says: (known) => [`fit ${known.old(thing)}`],
        cure: [right],
        subjects: (known) => subjectsOf(right, known),
      }
    },
  },
  {
    name: 'condemned part offered',
    ...ofGroup('wrong part', 0.2),
    going: 'wrong',
    // It is judged as it is, and then nobody gets a new one.
    at(acts, place) {
      const right = acts[place]
      const { thing } = right ?? {}
      if (right?.doing !== 'judge' || thing?.kind !== 'part') return null
      const { step } = right
      return {
        acts: 1,
        says: () => [`judge ${thing.name} replace because it is cracked`],
        cure: [
          act('supply', step, () => `new ${thing.name}`, thing),
          act('compare', step, () => `compare ${thing.name}: alike`, thing),
        ],
        subjects: (known) => [known.piece(thing), ...subjectsOf(right, known)],
      }
    },
  },
]

/** Fasteners of another step that still lie in their bag. */
function lotElsewhere(acts: readonly Act[], place: number, machine: Machine): Lot | undefined {
  const step = acts[place]?.step ?? 0
  const others = machine.steps.flatMap(({ things }, at) =>
    at + 1 === step
      ? []
      : things.filter((thing): thing is Lot => thing.kind === 'lot' && isStillOff(thing, acts, place)),
  )
  return others[step % Math.max(1, others.length)]
}
