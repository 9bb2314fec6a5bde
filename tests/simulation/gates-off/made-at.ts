import type { Act } from '../job/act.ts'
import type { Machine, Thing } from '../machines/machine.ts'
import type { MistakeClass } from '../mistakes/classes.ts'

/** A kind of mistake, made in one place alone: at a thing, or in a step (`step 2`). */
export function madeAt(mistake: MistakeClass, place: string): MistakeClass {
  return {
    ...mistake,
    at: (acts, nth, machine) => (isAt(acts[nth], place) ? mistake.at(acts, nth, machine) : null),
  }
}

function isAt(act: Act | undefined, place: string): boolean {
  if (!act) return false
  const { thing, step } = act
  return place === (thing ? nameOf(thing) : `step ${step}`)
}

/** The machine with what a mistake at that thing needs and little else: each line costs time. A whole step needs all of it. */
export function withLittleElse(machine: Machine, place: string): Machine {
  const kind = machine.steps.flatMap(({ things }) => things).find((thing) => nameOf(thing) === place)?.kind
  if (kind === undefined) return machine
  // The first thing is what the step is about; and something in a bag there has to be, or there is no last round.
  const isKept = (thing: Thing, at: number, step: number) =>
    at === 0 || (step === 0 && at === 1) || thing.kind === kind
  const steps = machine.steps.map((each, step) => ({
    ...each,
    things: each.things.filter((thing, at) => isKept(thing, at, step)),
  }))
  return { ...machine, steps }
}

function nameOf(thing: Thing): string {
  return 'name' in thing ? thing.name : thing.text
}
