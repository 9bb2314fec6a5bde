import type { Chance } from '../../support/damage/chance.ts'
import type { Act } from '../job/act.ts'
import type { Machine } from '../machines/machine.ts'
import type { Made, MistakeClass } from './classes.ts'

/** A mistake that will be made when its place in the list of acts is reached. */
export interface Planned {
  mistake: MistakeClass
  made: Made
}

/**
 * Draws mistakes by their weights, each at a place where it can be made, no two about the same thing: what one refusal names would be
 * both. Keys are places in the list.
 */
export function planMistakes(
  acts: readonly Act[],
  machine: Machine,
  classes: readonly MistakeClass[],
  mistakes: number,
  chance: Chance,
): Map<number, Planned> {
  const plan = new Plan(acts, machine, chance)
  // What this machine has no place for is drawn again.
  for (let turn = 0; turn < mistakes * 3 && plan.planned.size < mistakes; turn += 1)
    plan.add(byWeight(classes, chance))
  return plan.planned
}

/** One mistake of each kind, where it can be made. */
export function planEach(
  acts: readonly Act[],
  machine: Machine,
  classes: readonly MistakeClass[],
  chance: Chance,
): Map<number, Planned> {
  const plan = new Plan(acts, machine, chance)
  for (const each of classes) plan.add(each)
  return plan.planned
}

class Plan {
  readonly planned = new Map<number, Planned>()
  readonly #acts: readonly Act[]
  readonly #machine: Machine
  readonly #chance: Chance
  readonly #taken = new Set<unknown>()

  constructor(acts: readonly Act[], machine: Machine, chance: Chance) {
    this.#acts = acts
    this.#machine = machine
    this.#chance = chance
  }

  add(mistake: MistakeClass): void {
    const places = this.#acts.flatMap((_, place) => {
      const made = mistake.at(this.#acts, place, this.#machine)
      return made !== null && touched(this.#acts, place, made).every((each) => !this.#taken.has(each))
        ? [{ place, made }]
        : []
    })
    const chosen = places[this.#chance.whole(0, places.length - 1)]
    if (!chosen) return
    this.planned.set(chosen.place, { mistake, made: chosen.made })
    for (const each of touched(this.#acts, chosen.place, chosen.made)) this.#taken.add(each)
  }
}

/** Places in the list, and what is done there is about. */
function touched(acts: readonly Act[], place: number, made: Made): unknown[] {
  const span = acts.slice(place, place + made.acts)
  const things = [...span.map(({ thing }) => thing), made.about].filter((thing) => thing !== undefined)
  return [...span.map((_, next) => place + next), ...things]
}

function byWeight(classes: readonly MistakeClass[], chance: Chance): MistakeClass {
  let left = chance.between(
    0,
    classes.reduce((sum, { weight }) => sum + weight, 0),
  )
  for (const each of classes) {
    left -= each.weight
    if (left < 0) return each
  }
  return classes.at(-1) as MistakeClass
}
