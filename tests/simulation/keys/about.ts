import type { Command } from '../../../src/ui/act.ts'
import type { State } from '../../../src/ui/model/scene.ts'

/** What a command is about: the steps and the pieces whose screens may have it. */
export interface About {
  steps: ReadonlySet<number>
  pieces: ReadonlySet<string>
}

export function aboutOf(state: State, commands: readonly Command[]): About {
  const steps = new Set<number>()
  const pieces = new Set<string>()
  const told = JSON.stringify(commands)
  for (const [, no] of told.matchAll(/"step":(\d+)/g)) steps.add(Number(no))
  for (const [id] of told.matchAll(/(?<=[" ])[a-z]\d+(?=")/g)) {
    const step = stepOf(state, id)
    if (step !== undefined) steps.add(step)
    if (id.startsWith('p')) pieces.add(id)
  }
  for (const [, no] of told.matchAll(/"(?:start|finish|look|check) (\d+)"/g)) steps.add(Number(no))
  if (state.build !== null) steps.add(state.build)
  return { steps, pieces }
}

function stepOf(state: State, id: string): number | undefined {
  const { ledger, marks, tightenings, fluids, consumables, checks } = state
  const piece = (each: unknown) => ledger.accounts.get(each as `p${number}`)?.piece.step
  const known: Record<string, () => number | undefined> = {
    p: () => piece(id),
    m: () => marks.get(id as `m${number}`)?.step,
    t: () => tightenings.get(id as `t${number}`)?.step,
    f: () => fluids.get(id as `f${number}`)?.step,
    s: () => consumables.get(id as `s${number}`)?.step,
    k: () => piece(checks.get(id as `k${number}`)?.piece),
  }
  return known[id.charAt(0)]?.()
}
