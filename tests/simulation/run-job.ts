import { chanceOf } from '../support/damage/chance.ts'
import type { Act } from './job/act.ts'
import { buildActs } from './job/build-acts.ts'
import { stripActs } from './job/strip-acts.ts'
import { waitActs } from './job/wait-acts.ts'
import type { Machine, Thing } from './machines/machine.ts'
import type { Said } from './measure/costs.ts'
import { notHome } from './measure/truth.ts'
import { makeMistake } from './mechanic/make-mistake.ts'
import { type FalseBlock, Mechanic } from './mechanic/mechanic.ts'
import type { MistakeClass } from './mistakes/classes.ts'
import type { Fate } from './mistakes/mistake.ts'
import { planEach, planMistakes } from './mistakes/plan-mistakes.ts'

/** What came of one whole job. */
export interface JobOutcome {
  fates: Fate[]
  falseBlocks: FalseBlock[]
  /** What is not in the machine at an open gate, though no mistake that nobody saw accounts for it. */
  unexplained: string[]
  /** Whether the first start was cleared. */
  cleared: boolean
  said: readonly Said[]
  entries: number
}

/** Takes a machine apart and puts it back, with so many mistakes of these kinds: 0 for a clean job, or one of each. */
export function runJob(
  machine: Machine,
  seed: number,
  classes: readonly MistakeClass[],
  mistakes: number | 'one of each',
): JobOutcome {
  const chance = chanceOf(seed)
  const acts = [...stripActs(machine), ...waitActs(machine), ...buildActs(machine)]
  const planned =
    mistakes === 'one of each'
      ? planEach(acts, machine, classes, chance)
      : planMistakes(acts, machine, classes, mistakes, chance)
  const mechanic = new Mechanic(machine)
  let place = 0
  while (place < acts.length) {
    const act = acts[place] as Act
    const slip = mechanic.isDone(act) ? undefined : planned.get(place)
    const count = slip?.made.acts ?? 1
    const isGoingOn = slip
      ? makeMistake(mechanic, slip, acts.slice(place, place + count), chance)
      : mechanic.isDone(act) || mechanic.perform(act)
    if (!isGoingOn) break
    place += count
  }
  const { state } = mechanic.bench.session
  const isExcused = (thing: Thing) => mechanic.open().some((defect) => defect.keepsOut?.(thing))
  const unexplained = state.cleared ? notHome(machine, state, mechanic.known, isExcused) : []
  mechanic.end()
  return {
    fates: mechanic.fates,
    falseBlocks: mechanic.falseBlocks,
    unexplained,
    cleared: state.cleared,
    said: mechanic.bench.said,
    entries: mechanic.bench.session.entries().length,
  }
}
