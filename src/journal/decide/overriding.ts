import { isEasedOn } from '../../plan/eased.ts'
import type { DecisionTarget, TighteningId } from '../../plan/facts.ts'
import { Gates } from '../../plan/gates.ts'
import { isJudging, type Reason } from '../../plan/reasons.ts'
import { nextTurn } from '../../plan/tightening.ts'
import { consumableReasons, curing } from '../../plan/waiting/consumables.ts'
import { isAnswerDue } from '../../plan/waiting/outings.ts'
import { secondReasons } from '../../plan/waiting/second-looks.ts'
import type { ConsumableId } from '../../plan/waiting/waiting-facts.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownStep, refuse, unknown } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** A gate or a thing owed is passed over, with a reason, which then stands wherever it is shown. */
export function override(state: State, { target, reason }: Of<'override'>): EntryBodyOf<'overridden'> {
  const passed = state.passedOver.get(target)
  const gates = [...new Set(overridable(state, target))].filter((code) => !passed?.has(code))
  if (gates.length === 0) refuse({ code: 'nothing-to-override', target })
  return { type: 'overridden', target, reason: given(reason, 'reason'), gates }
}

/** The codes of what stands and could be passed over: of a gate of a step, or of one thing owed. */
function overridable(state: State, target: DecisionTarget): string[] {
  const [, gate, no] = /^(start|finish|look|check) (\d+)$/.exec(target) ?? []
  return gate === undefined ? ofThing(state, target) : codesOf(ofGate(state, gate, Number(no)))
}

function ofGate(state: State, gate: string, no: number): Reason[] {
  const step = knownStep(state, no)
  const gates = new Gates(state)
  if (step.built === 'done' && gate !== 'check') refuse({ code: 'step-done', step: no })
  if (gate === 'start' && step.built === 'underway') refuse({ code: 'step-under-way', step: no })
  if (gate === 'start') return gates.start(no)
  if (gate === 'finish') return gates.finish(no)
  if (gate === 'look') return gates.lookDue(no)
  return step.way === 'both'
    ? secondReasons(state, no, gates.contentsOf(no))
    : [{ code: 'check-open', step: no }]
}

/** By the letter of its number. */
function ofThing(state: State, target: DecisionTarget): string[] {
  switch (target[0]) {
    case 'm': {
      const mark = state.marks.get(target as `m${number}`) ?? unknown('mark', target)
      return mark.confirmed ? [] : ['mark-open']
    }
    case 'f': {
      const fluid = state.fluids.get(target as `f${number}`) ?? unknown('fluid', target)
      return fluid.filledLitres === null ? ['fluid-open'] : []
    }
    case 'x': {
      const fault = state.faults.get(target as `x${number}`) ?? unknown('fault', target)
      return fault.settled === null ? ['fault-open'] : []
    }
    case 'l': {
      const loosening = state.loosenings.get(target as `l${number}`) ?? unknown('loosening', target)
      return isEasedOn(state, loosening) ? ['eased-on'] : []
    }
    case 'k': {
      const check = state.checks.get(target as `k${number}`) ?? unknown('check', target)
      return check.done === null ? ['check-due'] : []
    }
    case 'b': {
      const outing = state.outings.get(target as `b${number}`) ?? unknown('outing', target)
      return isAnswerDue(state, outing) ? ['out-unanswered'] : []
    }
    case 's':
      return ofConsumable(state, target as ConsumableId)
    default:
      return ofTightening(state, target as TighteningId)
  }
}

function ofConsumable(state: State, id: ConsumableId): string[] {
  const { step, before } = state.consumables.get(id) ?? unknown('consumable', id)
  const waits: Reason[] = [
    ...consumableReasons(state, new Gates(state).contentsOf(step)),
    ...before.flatMap((target) => curing(state, target)),
  ]
  return codesOf(waits.filter((reason) => 'consumable' in reason && reason.consumable === id))
}

function ofTightening(state: State, id: TighteningId): string[] {
  const tightening = state.tightenings.get(id) ?? unknown('tightening', id)
  // A bolt that may have been turned twice cannot be waved through.
  const { suspect } = tightening
  if (suspect) refuse({ code: 'angle-suspect', tightening: id, fastener: suspect.fastener })
  return nextTurn(tightening) ? ['tighten-open'] : []
}

/** A piece that is not accepted is passed over by a verdict alone. */
function codesOf(reasons: Reason[]): string[] {
  return reasons.filter((reason) => !isJudging(reason)).map(({ code }) => code)
}
