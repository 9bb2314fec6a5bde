import type { BrokenHow } from './bag-item.ts'
import { clausesText } from './clauses.ts'
import type { Count } from './count.ts'
import { type Fault, fault } from './outcome.ts'
import type { PlacedSaying } from './saying.ts'
import type { State } from './state-words.ts'

/** How many are here, should be, are missing and are broken: `count + missing = should`, `broken <= count`. */
export interface Tally {
  count: number
  should: number
  missing: number
  broken: number
  brokenHow?: BrokenHow
  missingAt?: string[]
  brokenAt?: string[]
}

/** All that a line says about numbers. */
export interface Said {
  clauses: readonly string[][]
  sayings: readonly PlacedSaying[]
  count: Count
  /** What a prefix said of all of them. */
  state: State | undefined
  positions: readonly string[] | undefined
  /** The positions are those the common pieces came from. */
  isAlike: boolean
  /** The item without the words of a saying. */
  without: (saying: PlacedSaying) => string
}

type StateSaying = Extract<PlacedSaying, { says: 'state' }>

/** Adds up what a line says about numbers; a fault where it contradicts itself. */
export function tally(said: Said): Tally | Fault {
  const { count, positions } = said
  const should = count.isStated ? count.should : Math.max(1, positions?.length ?? 1)
  const states = said.sayings.filter((saying) => saying.says === 'state')
  const lone = states.find((saying) => saying.count === 'lone')
  if (lone && should > 1) return fault('count', lone.state, `${said.without(lone)}, 1 ${lone.state}`)
  const missing = missingOf(said, states, should)
  if (typeof missing === 'object') return missing
  const broken = brokenOf(said, states, should - missing)
  if ('nearest' in broken) return broken
  const places = placesOf(said, states, should)
  if ('nearest' in places) return places
  return mismatch(said, should, missing) ?? { count: should - missing, should, missing, ...broken, ...places }
}

function missingOf(said: Said, states: readonly StateSaying[], should: number): number | Fault {
  const sayings = states.filter((saying) => saying.state === 'missing')
  const counted = sayings.reduce((sum, saying) => sum + numberOf(saying, should), 0)
  const told = missingByCount(said, should)
  const last = sayings.at(-1)
  if (!last || counted === told) return told ?? 0
  // `7 of 8, 2 missing`: the one number or the other.
  if (told !== undefined) return fault('count', saidText(said, last), said.without(last))
  if (counted <= should) return counted
  return fault('count', saidText(said, last), `${said.without(last)}, ${should} missing`)
}

/** How many are missing by a prefix or by `7 of 8`; undefined where neither speaks of it. */
function missingByCount({ count, state }: Said, should: number): number | undefined {
  if (state === 'missing') return count.isOf ? count.found : should
  if (!count.isOf) return undefined
  return state === undefined ? should - count.found : 0
}

function brokenOf(
  said: Said,
  states: readonly StateSaying[],
  here: number,
): Pick<Tally, 'broken' | 'brokenHow'> | Fault {
  const sayings = states.filter((saying) => saying.state !== 'missing')
  const [first, second] = sayings
  if (said.state !== undefined && said.state !== 'missing') {
    if (first) return fault('count', saidText(said, first), said.without(first))
    const broken = said.count.isOf ? said.count.found : here
    return { broken, ...(broken > 0 && { brokenHow: said.state }) }
  }
  if (!first || first.state === 'missing') return { broken: 0 }
  // One line tells one kind of damage; the other gets a line of its own.
  const isOther = second !== undefined && second.state !== first.state
  if (isOther) return fault('count', saidText(said, second), said.without(second))
  const broken = sayings.reduce((sum, saying) => sum + numberOf(saying, here), 0)
  if (broken > here) {
    const atMost = here > 0 ? `, ${here} ${first.state}` : ''
    return fault('count', saidText(said, first), `${said.without(first)}${atMost}`, said.without(first))
  }
  return { broken, ...(broken > 0 && { brokenHow: first.state }) }
}

/** The positions of the missing and the broken ones: as many as these are, and among those of the line. */
function placesOf(
  said: Said,
  states: readonly StateSaying[],
  should: number,
): Pick<Tally, 'missingAt' | 'brokenAt'> | Fault {
  const places: Pick<Tally, 'missingAt' | 'brokenAt'> = {}
  for (const saying of states) {
    if (!saying.at) continue
    const key = saying.state === 'missing' ? 'missingAt' : 'brokenAt'
    const { at } = saying
    const isWrongNumber = numberOf(saying, should) !== at.length
    const isElsewhere = said.positions && !at.every((place) => said.positions?.includes(place))
    const isTwice = at.some((place) => places[key]?.includes(place))
    if (isWrongNumber || isElsewhere || isTwice) {
      const plain = `${said.without(saying)}, ${numberOf(saying, should)} ${saying.state}`
      return fault('positions', saidText(said, saying), plain, said.without(saying))
    }
    places[key] = [...(places[key] ?? []), ...at]
  }
  return places
}

/** Positions must be as many as belong there; those of common pieces may be as many as were found. */
function mismatch(said: Said, should: number, missing: number): Fault | undefined {
  const { positions, count, isAlike } = said
  if (!positions || positions.length === should) return undefined
  if (isAlike && positions.length === should - missing) return undefined
  const rest = clausesText(said.clauses).split(' ').slice(count.used).join(' ')
  const saying = said.sayings.find(({ says }) => says === 'positions')
  const part = saying ? saidText(said, saying) : positions.join(',')
  return fault('positions', part, `${positions.length} ${rest}`, rest)
}

function numberOf(saying: StateSaying, all: number): number {
  if (saying.count === 'all') return all
  return saying.count === 'lone' ? 1 : saying.count
}

function saidText({ clauses }: Said, { clause, from, used }: PlacedSaying): string {
  return (clauses[clause] ?? []).slice(from, from + used).join(' ')
}
