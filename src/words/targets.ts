import type { State } from '../journal/state.ts'
import type { DecisionTarget, FaultId, FluidId, LooseningId, MarkId, TighteningId } from '../plan/facts.ts'
import { consumableName } from './consumables/names.ts'
import { checkName } from './judging/names.ts'
import { faultName, fluidName, looseningName, markName, stepName, tighteningName } from './names.ts'
import { outingName } from './waiting/names.ts'

/** What an override stands for: `the start of step 4, Valve cover`, or the thing owed. */
export function targetName(state: State, target: DecisionTarget): string {
  const gate = /^(start|finish|look|check) (\d+)$/.exec(target)
  if (gate) return `${GATES[gate[1] as keyof typeof GATES]} ${stepName(state, Number(gate[2]))}`
  if (target.startsWith('m')) return markName(state, target as MarkId)
  if (target.startsWith('f')) return fluidName(state, target as FluidId)
  if (target.startsWith('x')) return faultName(state, target as FaultId)
  if (target.startsWith('l')) return looseningName(state, target as LooseningId)
  if (target.startsWith('k')) return checkName(state, target as `k${number}`)
  if (target.startsWith('b')) return outingName(state, target as `b${number}`)
  if (/^s\d/.test(target)) return consumableName(state, target as `s${number}`)
  return tighteningName(state, target as TighteningId)
}

const GATES = {
  start: 'the start of',
  finish: 'the finish of',
  look: 'the last look before',
  check: 'the doing of',
}
