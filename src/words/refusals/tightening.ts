import type { State } from '../../journal/state.ts'
import type { TighteningId } from '../../plan/facts.ts'
import { say, turnWords } from '../cures.ts'
import { nextFastener } from '../lookups.ts'
import { fastenerName, passName, stepName, tighteningName } from '../names.ts'
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
    told(`${tighteningName(state, tightening)} has no ${fastenerName(fastener)}`, goOn(state, tightening), [
      `in order: ${state.tightenings.get(tightening)?.order.join(', ')}`,
    ]),
  'turned-already': (state, { tightening, fastener }) =>
    told(
      `${fastenerName(fastener)} of ${tighteningName(state, tightening)} is through ${currentPass(state, tightening)} already`,
      goOn(state, tightening),
    ),
  'out-of-turn': (state, { tightening, fastener, next }) =>
    told(
      `${fastenerName(fastener)} of ${tighteningName(state, tightening)} is not next in order, ${fastenerName(next)} is`,
      goOn(state, tightening),
    ),
  'all-turned': (state, { tightening }) =>
    told(
      `every pass of ${tighteningName(state, tightening)} is through`,
      `leave it; to do it over, ${say(`slacken ${tightening} because ...`)}`,
    ),
  'angle-suspect': (state, { tightening, fastener }) =>
    told(
      `${fastenerName(fastener)} of ${tighteningName(state, tightening)} may be turned already`,
      `look at its mark: ${say(`turned ${tightening} yes because ...`)} or ${say(`turned ${tightening} no because ...`)}; in doubt ${say(`slacken ${tightening} because ...`)}, as the machine's manual has it`,
      [`work stopped in ${currentPass(state, tightening)}`, 'an angle is never turned twice on a fastener'],
    ),
  'not-suspect': (state, { tightening }) =>
    told(`no fastener of ${tighteningName(state, tightening)} is in doubt`, goOn(state, tightening)),
}

function currentPass(state: State, id: TighteningId): string {
  const tightening = state.tightenings.get(id)
  const next = tightening && nextFastener(tightening)
  return tightening && next ? passName(tightening, next.pass) : 'its last pass'
}

function goOn(state: State, id: TighteningId): string {
  const tightening = state.tightenings.get(id)
  const next = tightening && nextFastener(tightening)
  if (!tightening || !next) return 'every pass is through'
  return `next is ${fastenerName(next.fastener)} in ${passName(tightening, next.pass)}: ${turnWords(state, id, next.fastener)}`
}
