import type { Gate } from '../../journal/refusal.ts'
import type { State } from '../../journal/state.ts'
import { doneWords, say } from '../cures.ts'
import { counted, stepNumbers } from '../grammar.ts'
import { stepName } from '../names.ts'
import { reasonLines } from '../reason-lines.ts'
import { targetName } from '../targets.ts'
import { told } from '../told.ts'
import type { RefusalOf, Tellers } from './tellers.ts'

/** What concerns the steps: their order, and whether one may start, finish or be opened again. */
export const stepRefusals: Tellers<
  | 'no-strip-step'
  | 'not-a-strip-step'
  | 'cycle'
  | 'step-blocked'
  | 'step-not-begun'
  | 'step-done'
  | 'step-under-way'
  | 'no-build-step'
  | 'nothing-to-reopen'
  | 'nothing-to-override'
  | 'not-turned-over'
> = {
  'no-strip-step': () =>
    told('nothing is coming off now, so there is nothing to end', `${say('begin TITLE')} starts a step`),
  'not-a-strip-step': (state, { step }) =>
    told(
      `${stepName(state, step)}, is done on the way back only: it has no place in the order of coming off`,
      'name steps that came off',
    ),
  cycle: (state, { steps }) =>
    told(
      `steps ${[...steps, steps[0]].join(', ')} would each wait for the next, without end`,
      'leave one of these needs out',
      steps.map((no) => (state.steps.has(no) ? stepName(state, no) : `step ${no}, the new one`)),
    ),
  'not-turned-over': (state, { step }) =>
    told(
      `${stepName(state, step)}, is no step in which the machine is turned over by hand`,
      `name one, or add it: ${say('add turn the crank over by hand turns 2')}`,
    ),
  'step-blocked': blockedTold,
  'step-not-begun': (state, { step, built }) => {
    const name = stepName(state, step)
    if (built === 'done')
      return told(`${name}, is done already`, `${say(`reopen ${step} because ...`)} opens it again`)
    if (built === 'redo') return told(`${name}, was reopened and is not taken up again`, takeUp(step))
    return told(`${name}, is not taken up yet`, takeUp(step))
  },
  'step-done': (state, { step }) =>
    told(`${stepName(state, step)}, is done already`, `${say(`reopen ${step} because ...`)} opens it again`),
  'step-under-way': (state, { step }) =>
    told(
      `${stepName(state, step)}, is under way already`,
      `go on with it; ${doneWords(state, step)} when it is complete`,
    ),
  'no-build-step': () =>
    told(
      'no step is under way on the way back',
      `${say('back')} shows the plan, ${say('take N')} takes a step up`,
    ),
  'nothing-to-reopen': (_, { steps }) =>
    steps.length === 0
      ? told('no step was named to open again', `name it: ${say('reopen N because ...')}`)
      : told(
          `${stepNumbers(steps)} ${steps.length === 1 ? 'is' : 'are'} neither done nor under way, so there is nothing to open again`,
          takeUp(steps[0] ?? 0),
        ),
  'nothing-to-override': (state, { target }) => {
    const reason = state.overrides.get(target)
    return reason === undefined
      ? told(`nothing stands in the way of ${targetName(state, target)}`, 'go on without an override')
      : told(`overridden already: ${targetName(state, target)}`, 'go on', [`because ${reason}`])
  },
}

function takeUp(step: number): string {
  return `take it up: ${say(`take ${step}`)}`
}

const BLOCKED: Record<Gate, (name: string, why: string) => string> = {
  start: (name, why) => `${name}, cannot start yet: ${why}`,
  finish: (name, why) => `${name}, is not complete: ${why}`,
  look: (name, why) => `the last look before ${name}, cannot be taken yet: ${why}`,
}

const NOT_ACCEPTED = new Set(['check-due', 'piece-judged', 'compare-due', 'compare-wrong'])

function blockedTold(state: State, { step, gate, reasons }: RefusalOf<'step-blocked'>) {
  const lines = reasonLines(state, reasons)
  const what = BLOCKED[gate](stepName(state, step), counted(lines.length, 'reason'))
  const lift = lines.length === 1 ? 'lift it' : 'lift them, nearest first'
  // No override for what only a hand can lift, pieces that are not home and the look itself, nor for a piece that is not
  // accepted: a verdict with its reason is the way past that.
  const passable = reasons.filter(({ code }) => !NOT_ACCEPTED.has(code))
  const isLiftedByHand =
    gate === 'look' || passable.every(({ code }) => gate === 'finish' && code === 'not-home')
  const all = passable.length === reasons.length ? 'all of them' : `the other ${passable.length}`
  const past = `or go past ${reasons.length === 1 ? 'it' : all} knowingly: ${say(`override ${gate} ${step} because ...`)}`
  return told(what, isLiftedByHand ? lift : `${lift}, ${past}`, lines)
}
