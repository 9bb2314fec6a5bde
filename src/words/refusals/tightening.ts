import type { State } from '../../journal/state.ts'
import type { LooseningId, TighteningId } from '../../plan/facts.ts'
import type { Tightening } from '../../plan/tightening.ts'
import { say, turnWords } from '../cures.ts'
import { nextFastener } from '../lookups.ts'
import { fastenerName, looseningName, passName, stepName, tighteningName } from '../names.ts'
import { told } from '../told.ts'
import type { Tellers } from './tellers.ts'

/** What concerns the passes over the fasteners of a joint. */
export const tighteningRefusals: Tellers<
  | 'no-tightening'
  | 'tightening-begun'
  | 'order-wrong'
  | 'no-such-fastener'
  | 'turned-already'
  | 'out-of-turn'
  | 'all-turned'
  | 'angle-suspect'
  | 'not-suspect'
  | 'passes-wrong'
  | 'fastener-faulty'
> = {
  'no-tightening': (state, { step }) =>
    step === null
      ? told('no step is under way, so there is nothing to tighten', `${say('take N')} takes a step up`)
      : told(
          `${stepName(state, step)}, has no tightening that is open`,
          `set one, with the passes of the machine's manual: ${say('tighten PIECE: ...')}`,
        ),
  'tightening-begun': (state, { tightening }) =>
    told(
      `${tighteningName(state, tightening)} is begun, so its passes cannot be changed`,
      `back the fasteners off, ${say(`slacken ${tightening} because ...`)}, then set the passes`,
    ),
  'order-wrong': (_, { missing, unknown, twice }) =>
    told('the order must name each fastener once', 'say the order again', [
      ...(missing.length > 0 ? [`missing: ${missing.join(', ')}`] : []),
      ...(unknown.length > 0 ? [`not there: ${unknown.join(', ')}`] : []),
      ...(twice.length > 0 ? [`twice: ${twice.join(', ')}`] : []),
    ]),
  'no-such-fastener': (state, { tightening, fastener }) =>
    told(`${jointName(state, tightening)} has no ${fastenerName(fastener)}`, goOn(state, tightening), [
      `in order: ${joint(state, tightening)?.order.join(', ')}`,
    ]),
  'turned-already': (state, { tightening, fastener }) =>
    told(
      `${fastenerName(fastener)} of ${jointName(state, tightening)} is through ${currentPass(state, tightening)} already`,
      goOn(state, tightening),
    ),
  'out-of-turn': (state, { tightening, fastener, next }) =>
    told(
      `${fastenerName(fastener)} of ${jointName(state, tightening)} is not next in order, ${fastenerName(next)} is`,
      goOn(state, tightening),
    ),
  'all-turned': (state, { tightening }) =>
    told(
      `every pass of ${jointName(state, tightening)} is through`,
      tightening.startsWith('l')
        ? `take them out: ${say('off ...')}`
        : `leave it; to do it over, ${say(`slacken ${tightening} because ...`)}`,
    ),
  'angle-suspect': (state, { tightening, fastener }) =>
    told(
      `${fastenerName(fastener)} of ${tighteningName(state, tightening)} may be turned already`,
      `look at its mark: ${say(`turned ${tightening} yes because ...`)} or ${say(`turned ${tightening} no because ...`)}; in doubt ${say(`slacken ${tightening} because ...`)}, as the machine's manual has it`,
      [`work stopped in ${currentPass(state, tightening)}`, 'an angle is never turned twice on a fastener'],
    ),
  'not-suspect': (state, { tightening }) =>
    told(`no fastener of ${tighteningName(state, tightening)} is in doubt`, goOn(state, tightening)),
  'passes-wrong': (_, { why }) => told(PASSES_WRONG[why].what, PASSES_WRONG[why].cure),
  'fastener-faulty': (state, { tightening, fastener, fault }) =>
    told(
      `${fastenerName(fastener)} of ${tighteningName(state, tightening)} never came to its torque, so no other is turned on`,
      `put it right, then ${say(`settle ${fault}: ...`)}; what the others need after that, the machine's manual says`,
      [`${fault}: ${state.faults.get(fault)?.in?.says ?? 'no torque'}`],
    ),
}

const PASSES_WRONG = {
  'witness-not-last': {
    what: 'witness marks are drawn when every pass is through, so they come last',
    cure: 'say the passes again, with the mark at the end',
  },
  'nothing-to-back-off': {
    what: 'a tightening does not begin with backing off',
    cure: "say the passes again as the machine's manual has them",
  },
  'not-loosening': {
    what: 'fasteners are eased by turning them back, and no torque belongs to that',
    cure: `say the steps as turns: ${say('loosen head bolts 2x4: 90 deg, 90 deg, free')}`,
  },
}

function joint(state: State, id: TighteningId | LooseningId): Tightening | undefined {
  return state.tightenings.get(id as TighteningId) ?? state.loosenings.get(id as LooseningId)
}

function jointName(state: State, id: TighteningId | LooseningId): string {
  return id.startsWith('l')
    ? looseningName(state, id as LooseningId)
    : tighteningName(state, id as TighteningId)
}

function currentPass(state: State, id: TighteningId | LooseningId): string {
  const tightening = joint(state, id)
  const next = tightening && nextFastener(tightening)
  return tightening && next ? passName(tightening, next.pass) : 'its last pass'
}

function goOn(state: State, id: TighteningId | LooseningId): string {
  const tightening = joint(state, id)
  const next = tightening && nextFastener(tightening)
  if (!tightening || !next) return 'every pass is through'
  return `next is ${fastenerName(next.fastener)} in ${passName(tightening, next.pass)}: ${turnWords(state, id, next.fastener)}`
}
