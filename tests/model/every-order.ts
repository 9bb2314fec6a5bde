import type { Command } from '../../src/journal/command.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import type { Entry } from '../../src/journal/entry.ts'
import { fold } from '../../src/journal/fold.ts'
import type { State } from '../../src/journal/state.ts'
import { auditLedger } from '../../src/ledger/laws.ts'
import { Gates } from '../../src/plan/gates.ts'
import { leftovers } from '../../src/plan/leftovers.ts'
import { numbered, quickText } from '../support/record.ts'
import { leftoverLines } from './leftover-lines.ts'
import { NaiveModel } from './naive-model.ts'

export interface Explored {
  /** Different states reached, the one at the start among them. */
  states: number
  /** Commands carried out on them. */
  carriedOut: number
  /** States with a cleared first start. */
  cleared: number
  /** Whether nothing new can be reached from there any more. */
  isWhole: boolean
}

/**
 * Carries out every command in every order, up to `depth` commands one after another, and compares each state
 * that is reached with the naive model. A state reached on two ways is gone on from once.
 */
export function everyOrder(start: readonly Entry[], commands: readonly Command[], depth: number): Explored {
  const explored: Explored = { states: 1, carriedOut: 0, cleared: 0, isWhole: false }
  const first = { entries: [...start], state: fold(start) }
  const seen = new Set([signature(first.state, new NaiveModel(start))])
  let edge: { entries: Entry[]; state: State }[] = [first]
  for (let step = 0; step < depth; step += 1) {
    const next: typeof edge = []
    for (const { entries, state } of edge) {
      for (const command of commands) {
        const decision = decide(state, command)
        if (!decision.ok) continue
        explored.carriedOut += 1
        const on = [...entries, numbered(decision.body, state.seq + 1)]
        const after = fold(on)
        const model = new NaiveModel(on)
        compare(after, model, on)
        const sign = signature(after, model)
        if (seen.has(sign)) continue
        seen.add(sign)
        explored.states += 1
        if (after.cleared) explored.cleared += 1
        next.push({ entries: on, state: after })
      }
    }
    edge = next
  }
  explored.isWhole = edge.length === 0
  return explored
}

function compare(state: State, model: NaiveModel, entries: readonly Entry[]): void {
  const told = () => entries.map(({ type, n }) => `${n} ${type}`).join(', ')
  const unexplained = model.unexplained()
  if (state.cleared && unexplained.length > 0)
    throw new Error(`cleared with ${unexplained.join(', ')} after ${told()}`)
  const lines = leftoverLines(leftovers(new Gates(state)))
  if (lines.join('\n') !== unexplained.join('\n'))
    throw new Error(`leftovers ${lines.join(', ')} and not ${unexplained.join(', ')} after ${told()}`)
  const broken = auditLedger(state.ledger)
  if (broken.length > 0) throw new Error(`${JSON.stringify(broken)} after ${told()}`)
}

/**
 * What makes two states the same for all that may come: everything but the way there. When somebody worked counts only
 * where times are given, and none of the commands here gives one.
 */
function signature(state: State, model: NaiveModel): string {
  const {
    seq: _seq,
    clock: _clock,
    inForce: _inForce,
    undone: _undone,
    notes: _notes,
    card: _card,
    // What lay where once is told, and nothing is decided by it.
    takenFrom: _takenFrom,
    agreed: _agreed,
    ...rest
  } = state
  const steps = new Map([...state.steps].map(([no, step]) => [no, { ...step, work: null }]))
  return `${quickText({ ...rest, steps } as State)}\n${model.counts().join()}\n${model.unexplained().join()}`
}
