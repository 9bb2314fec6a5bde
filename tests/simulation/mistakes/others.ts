import { labelCode } from '../../../src/label/code.ts'
import type { Chance } from '../../support/damage/chance.ts'
import type { Act } from '../job/act.ts'
import { JOB } from '../job/build-acts.ts'
import { act } from '../job/strip-acts.ts'
import type { Lot } from '../machines/machine.ts'
import type { Made, MistakeClass } from './classes.ts'
import { subjectsOf } from './leavings.ts'
import { refusedOr } from './refused-or.ts'
import { ofGroup } from './shares.ts'

/** Counted, read or begun wrongly. */
export const OTHERS: readonly MistakeClass[] = [
  misread('label: one digit wrong', (digits, chance) => {
    const at = chance.whole(0, digits.length - 1)
    const wrong = String((Number(digits[at]) + chance.whole(1, 9)) % 10)
    return digits.slice(0, at) + wrong + digits.slice(at + 1)
  }),
  misread('label: two digits swapped', (digits, chance) => {
    const places = Array.from(digits, (_, at) => at).filter(
      (at) => at + 1 < digits.length && digits[at] !== digits[at + 1],
    )
    const at = places[chance.whole(0, places.length - 1)] ?? 0
    return `${digits.slice(0, at)}${digits[at + 1]}${digits[at]}${digits.slice(at + 2)}`
  }),
  misread('label: one digit missing', (digits, chance) => {
    const at = chance.whole(0, digits.length - 1)
    return digits.slice(0, at) + digits.slice(at + 1)
  }),
  misread('label: one digit doubled', (digits, chance) => {
    const at = chance.whole(0, digits.length - 1)
    return digits.slice(0, at) + digits[at] + digits.slice(at)
  }),
  recounted('bag recounted, one too many', 1),
  recounted('bag recounted, one too few', -1),
  {
    name: 'one more said to be fitted than there is',
    ...ofGroup('other', 0.15),
    going: 'wrong',
    at(acts, place) {
      const right = acts[place]
      const { thing } = right ?? {}
      if (right?.doing !== 'fit' || thing?.kind !== 'lot' || thing.at !== null) return null
      return {
        acts: 1,
        says: () => [`fit ${thing.count + 1} ${thing.name}`],
        cure: [right],
        subjects: (known) => subjectsOf(right, known),
      }
    },
  },
  miscounted('one too few said when it came off', -1),
  miscounted('one too many said when it came off', 1),
  {
    name: 'step taken up too early',
    ...ofGroup('other', 0.15),
    going: 'wrong',
    at(acts, place, machine) {
      const right = acts[place]
      const upper = machine.steps[(right?.step ?? 0) - 1]?.after[0]
      if (right?.doing !== 'take' || upper === undefined) return null
      return {
        acts: 1,
        says: () => [`take ${upper + 1}`],
        cure: [right],
        subjects: () => [`step ${right.step}`, `step ${upper + 1}`],
      }
    },
  },
]

/** A code that is typed in from a bag. What it is taken for is stopped where it is taken for no bag at all. */
function misread(name: string, wrongly: (digits: string, chance: Chance) => string): MistakeClass {
  return {
    name,
    ...ofGroup('other', 0.1),
    going: 'wrong',
    at(acts, place): Made | null {
      const right = acts[place]
      const { thing } = right ?? {}
      if (right?.doing !== 'scan' || !thing) return null
      return {
        acts: 1,
        says: ({ containers }, chance) => [
          wrongly(labelCode(JOB, containers.get(thing) ?? 0).replace(/\D/g, ''), chance),
        ],
        cure: [],
        subjects: (known) => subjectsOf(right, known),
        stops: (result) =>
          refusedOr(result, ({ kind }) => (kind === 'container' || kind === 'step' ? null : kind)),
      }
    },
  }
}

/** A bag is counted before its step is taken up, and the count is off by one. */
function recounted(name: string, by: number): MistakeClass {
  return {
    name,
    ...ofGroup('other', 0.075),
    going: 'wrong',
    at(acts, place, machine): Made | null {
      const right = acts[place]
      if (right?.doing !== 'take') return null
      const lot = machine.steps[right.step - 1]?.things.find((thing) => thing.kind === 'lot')
      if (lot?.kind !== 'lot' || lot.isSingleUse) return null
      const counted = (count: number) =>
        act('count', right.step, ({ containers }) => `count ${containers.get(lot)} = ${count}`, lot)
      return {
        acts: 1,
        says: (known) => [counted(lot.count + by).say(known)],
        cure: [counted(lot.count)],
        subjects: ({ differences }) => differences.get(lot) ?? [],
        about: lot,
        isDoneAnyway: true,
      }
    },
  }
}

/** When it came off one was not seen, or one was counted twice. Nobody can know before it goes back. */
function miscounted(name: string, by: 1 | -1): MistakeClass {
  return {
    name,
    ...ofGroup('other', 0.075),
    going: 'wrong',
    at(acts, place, machine): Made | null {
      const right = acts[place]
      const { thing } = right ?? {}
      if (right?.doing !== 'off' || thing?.kind !== 'lot') return null
      if (thing.at !== null || thing.passes || thing.isSingleUse || thing.count < 2) return null
      if (machine.steps[right.step - 1]?.critical) return null
      const { step } = right
      return {
        acts: 1,
        says: (known) => {
          known.saidOff.set(thing, thing.count + by)
          return [right.say(known)]
        },
        cure: by > 0 ? oneFewer(thing, step) : oneMore(thing, step),
        subjects: (known) => [known.piece(thing)],
      }
    },
  }
}

/** It never came off: it is left off by name, and what the record has in the bag is no more. */
function oneFewer(lot: Lot, step: number): Act[] {
  return [
    act('correct', step, () => `leave off 1 ${lot.name} because one more was said than came off`),
    act('correct', step, (known) => `scrap 1 ${known.piece(lot)}`),
  ]
}

/** One more than was said came off: it gets a home of its own beside the others, and goes back there. */
function oneMore(lot: Lot, step: number): Act[] {
  const title = `one more of the ${lot.name}`
  const again: Lot = { ...lot, name: `last ${lot.one}`, one: `last ${lot.one}`, count: 1 }
  return [
    act('begin', step, () => `begin ${title}, free, does not hide`),
    act(
      'off',
      step,
      (known) => {
        known.oneMore.set(again, lot)
        return `off 1 ${lot.size} ${lot.drive} ${again.name} into new bag`
      },
      again,
    ),
    act('end', step, () => 'end'),
    act('correct', step, (known) => `fit ${known.piece(again)}`),
    act('correct', step, (known) => {
      known.toFit.set(lot, lot.count - 1)
      return `done ${known.newest}`
    }),
  ]
}
