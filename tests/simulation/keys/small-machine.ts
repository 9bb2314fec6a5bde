import type { Machine } from '../machines/machine.ts'
import { makeMachine } from '../machines/make-machine.ts'

/** Three steps with one of everything: enough to see every screen of a job. */
export function smallMachine(seed: number): Machine {
  return makeMachine(
    {
      name: 'model engine',
      fasteners: 20,
      sets: 2,
      steps: 3,
      hoses: 1,
      aids: 1,
      tools: 1,
      fluids: 1,
      mixed: 1,
      gaskets: 2,
      parts: 1,
      marks: 1,
      putOns: 1,
      critical: 1,
      tightened: 8,
    },
    seed,
  )
}
