import { type Machine, nameOf, type Thing } from '../machines/machine.ts'

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
