import type { Act } from '../job/act.ts'
import type { Known } from '../job/known.ts'
import type { Lot, Machine, Thing } from '../machines/machine.ts'
import type { Made, MistakeClass } from './classes.ts'
import { isStillOff, subjectsOf } from './leavings.ts'
import { ofGroup } from './shares.ts'

/** Right pieces at wrong places, or the wrong way round. */
export const WRONG_PLACES: readonly MistakeClass[] = [
  wrongPlace('matched piece at the place of another', 0.2, ({ thing, at }) => {
    if (thing?.kind !== 'set') return null
    const other = neighbour(thing.positions, at)
    return other === undefined ? null : () => `fit ${thing.one} ${at} at ${other}`
  }),
  wrongPlace('matched piece, by its number, at the place of another', 0.15, ({ thing, at }) => {
    if (thing?.kind !== 'set') return null
    const other = neighbour(thing.positions, at)
    return other === undefined ? null : (known) => `fit ${known.piece(thing, at)} at ${other}`
  }),
  wrongPlace('hose ends crossed', 0.15, ({ thing, at }) => {
    if (thing?.kind !== 'hose') return null
    const other = neighbour(thing.ends, at)
    return other === undefined ? null : (known) => `fit ${known.piece(thing, at)} at ${other}`
  }),
  wrongPlace('two hoses crossed', 0.05, ({ thing, at }, machine) => {
    if (thing?.kind !== 'hose') return null
    const other = hoses(machine).find((each) => each !== thing)
    return other ? (known) => `fit ${known.piece(thing, at)} at ${other.ends[0]}` : null
  }),
  wrongPlace(
    'bolt of another length',
    0.15,
    ({ thing, at }, machine) => {
      if (thing?.kind !== 'lot' || thing.at === null) return null
      const other = otherLength(thing, machine)
      return other ? () => `fit 1 ${other.name} ${other.size} at ${at}` : null
    },
    otherLength,
  ),
  outOfTurn(),
  turnedRound('matched piece turned round, its mark in the record', 0.1, true),
  turnedRound('matched piece turned round, no mark of it in the record', 0.05, false),
]

function wrongPlace(
  name: string,
  part: number,
  line: (act: Act, machine: Machine) => ((known: Known) => string) | null,
  inItsPlace: (lot: Lot, machine: Machine) => Thing | undefined = () => undefined,
): MistakeClass {
  return {
    name,
    ...ofGroup('wrong installation', part),
    going: 'wrong',
    at(acts, place, machine): Made | null {
      const right = acts[place]
      if (right?.doing !== 'fit') return null
      const says = line(right, machine)
      // Where it is taken, the wrong one is missed at its own place.
      const wrong = right.thing?.kind === 'lot' ? inItsPlace(right.thing, machine) : undefined
      if (wrong && !isStillOff(wrong, acts, place)) return null
      return (
        says && {
          acts: 1,
          says: (known) => [says(known)],
          cure: [right],
          subjects: (known) => [...subjectsOf(right, known), ...(wrong ? known.everyPiece(wrong) : [])],
        }
      )
    },
  }
}

/** The next but one is turned: what the order is for. */
function outOfTurn(): MistakeClass {
  return {
    name: 'bolt taken out of its order',
    ...ofGroup('wrong installation', 0.15),
    going: 'wrong',
    at(acts, place) {
      const right = acts[place]
      const wrong = acts[place + 1]
      const isPass = right?.thing === wrong?.thing && right?.pass === wrong?.pass
      if (right?.doing !== 'turn' || wrong?.doing !== 'turn' || !isPass) return null
      return {
        acts: 1,
        says: (known) => [wrong.say(known)],
        cure: [right],
        subjects: (known) => subjectsOf(right, known),
      }
    },
  }
}

/** At its own place, and the wrong way round. Only a mark that is to be confirmed makes somebody look. */
function turnedRound(name: string, part: number, isMarked: boolean): MistakeClass {
  return {
    name,
    ...ofGroup('wrong installation', part),
    going: 'wrong',
    at(acts, place) {
      const right = acts[place]
      const { thing, at } = right ?? {}
      if (right?.doing !== 'fit' || thing?.kind !== 'set' || at === undefined) return null
      if (thing.marked.includes(at) !== isMarked) return null
      return {
        acts: 1,
        says: () => [],
        cure: [],
        subjects: (known) => subjectsOf(right, known),
        isDoneAnyway: true,
        askedBy: ['repeated'],
        shows: (act) => act.doing === 'confirm' && act.thing === thing && act.at === at,
      }
    },
  }
}

function neighbour(places: readonly string[], at: string | undefined): string | undefined {
  const nth = places.indexOf(at ?? '')
  return places[nth + 1] ?? places[nth - 1]
}

function things(machine: Machine): Thing[] {
  return machine.steps.flatMap((step) => step.things)
}

function hoses(machine: Machine) {
  return things(machine).flatMap((thing) => (thing.kind === 'hose' ? [thing] : []))
}

function otherLength(lot: Lot, machine: Machine): Lot | undefined {
  return things(machine).find(
    (thing): thing is Lot => thing.kind === 'lot' && thing.name === lot.name && thing.size !== lot.size,
  )
}
