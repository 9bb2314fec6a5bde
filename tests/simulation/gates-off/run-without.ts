import type { Machine } from '../machines/machine.ts'
import type { MistakeClass } from '../mistakes/classes.ts'
import { runJob } from '../run-job.ts'
import { OFF } from './gate-switch.ts'
import type { Without } from './reports.ts'

/** A job while some gates are off, with so many mistakes of these kinds. For a program built with switches. */
export function runWithout(
  off: readonly string[],
  machine: Machine,
  mistakes: readonly MistakeClass[],
  count: number,
  seed = 1,
): Without {
  const gatesOff = (globalThis as unknown as Record<typeof OFF, Set<string>>)[OFF]
  gatesOff.clear()
  for (const gate of off) gatesOff.add(gate)
  const { fates, falseBlocks, cleared } = runJob(machine, seed, mistakes, count)
  return {
    seen: fates.map((fate) => ('where' in fate ? fate.where : fate.came)),
    refusals: fates.flatMap((fate) => ('refusal' in fate ? fate.refusal : [])),
    falseBlocks,
    cleared,
  }
}
