import { type Chance, chanceOf } from '../support/damage/chance.ts'
import type { Act } from './job/act.ts'
import { buildActs } from './job/build-acts.ts'
import { stripActs } from './job/strip-acts.ts'
import { waitActs } from './job/wait-acts.ts'
import type { Machine } from './machines/machine.ts'
import { type FalseBlock, Mechanic } from './mechanic/mechanic.ts'
import type { Made, MistakeClass } from './mistakes/classes.ts'
import type { Fate } from './mistakes/mistake.ts'

/** What came of one whole job. */
export interface JobOutcome {
  fates: Fate[]
  falseBlocks: FalseBlock[]
  /** Whether the first start was cleared. */
  cleared: boolean
  lines: number
}

interface Planned {
  mistake: MistakeClass
  made: Made
}

/** Takes a machine apart and puts it back, with so many mistakes of these kinds: none for a clean job. */
export function runJob(
  machine: Machine,
  seed: number,
  classes: readonly MistakeClass[],
  mistakes: number,
): JobOutcome {
  const chance = chanceOf(seed)
  const acts = [...stripActs(machine), ...waitActs(machine), ...buildActs(machine)]
  const planned = plan(acts, machine, classes, mistakes, chance)
  const mechanic = new Mechanic(machine)
  let place = 0
  while (place < acts.length) {
    const slip = planned.get(place)
    const done = slip
      ? makeMistake(mechanic, slip, acts.slice(place, place + slip.made.acts), chance)
      : perform(mechanic, acts[place])
    if (!done) break
    place += slip?.made.acts ?? 1
  }
  mechanic.end()
  return {
    fates: mechanic.fates,
    falseBlocks: mechanic.falseBlocks,
    cleared: mechanic.bench.session.state.cleared,
    lines: mechanic.bench.said.length,
  }
}

function perform(mechanic: Mechanic, act: Act | undefined): boolean {
  return act === undefined || mechanic.perform(act)
}

function makeMistake(
  mechanic: Mechanic,
  { mistake, made }: Planned,
  acts: readonly Act[],
  chance: Chance,
): boolean {
  const { name, going } = mistake
  const { cure, subjects } = made
  const defect = { mistake: name, going, at: mechanic.acts, cure, subjects }
  switch (going) {
    case 'left out':
      for (const line of made.says(mechanic.known, chance)) mechanic.sayWrong(line)
      mechanic.make(defect)
      return true
    case 'ticked':
      mechanic.make(defect)
      return acts.every((act) => mechanic.perform(act))
    case 'wrong': {
      mechanic.make(defect)
      const [line = ''] = made.says(mechanic.known, chance)
      const code = mechanic.sayWrong(line)
      // It was taken: whoever said it believes that it is done.
      if (code === null) return true
      mechanic.find(defect, 'at once', code)
      return acts.every((act) => mechanic.perform(act))
    }
    case 'broken off':
      throw new Error('no mistake goes that way yet')
    default:
      return going satisfies never
  }
}

/** Draws mistakes by their weights, each at a place where it can be made, none over another. */
function plan(
  acts: readonly Act[],
  machine: Machine,
  classes: readonly MistakeClass[],
  mistakes: number,
  chance: Chance,
): Map<number, Planned> {
  const planned = new Map<number, Planned>()
  const taken = new Set<number>()
  const total = classes.reduce((sum, { weight }) => sum + weight, 0)
  for (let turn = 0; turn < mistakes; turn += 1) {
    const mistake = byWeight(classes, chance.between(0, total))
    const places = acts.flatMap((_, place) => {
      const made = mistake.at(acts, place, machine)
      const isFree =
        made !== null &&
        !Array.from({ length: made.acts }, (_, next) => place + next).some((at) => taken.has(at))
      return isFree ? [{ place, made }] : []
    })
    if (places.length === 0) continue
    const { place, made } = places[chance.whole(0, places.length - 1)] as (typeof places)[number]
    planned.set(place, { mistake, made })
    for (let at = place; at < place + made.acts; at += 1) taken.add(at)
  }
  return planned
}

function byWeight(classes: readonly MistakeClass[], drawn: number): MistakeClass {
  let left = drawn
  for (const each of classes) {
    left -= each.weight
    if (left < 0) return each
  }
  return classes.at(-1) as MistakeClass
}
