import { isMatched } from '../../ledger/piece.ts'
import type { LooseningFacts, LooseningId, TighteningFacts, TighteningId } from '../../plan/facts.ts'
import { patternOf } from '../../plan/pattern.ts'
import { notHome } from '../../plan/reasons.ts'
import { isHalfWay, nextTurn, type Tightening } from '../../plan/tightening.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { refuseUnlessUnderWay } from './build.ts'
import { matesOf } from './mates.ts'
import { given, knownPiece, knownStep, refuse, unknown } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** One fastener through one pass: the next in order, unless a name is given to check against it. */
export function tighten(
  state: State,
  { tightening: asked, fastener }: Of<'tighten'>,
): EntryBodyOf<'tightened'> | EntryBodyOf<'loosened'> {
  const turned = asked === undefined ? current(state) : known(state, asked)
  if (isLoosening(turned)) {
    const { pass, fastener: next } = inTurn(turned, fastener)
    return { type: 'loosened', loosening: turned.id, pass, fastener: next }
  }
  const { id, suspect } = turned
  refuseUnlessUnderWay(knownStep(state, turned.step))
  const reasons = [turned.piece, ...(turned.with ?? [])]
    .flatMap((piece) => membersOf(state, piece))
    .flatMap((account) => notHome(state, account))
  if (reasons.length > 0) refuse({ code: 'step-blocked', step: turned.step, gate: 'finish', reasons })
  const faulty = faultIn(state, id)
  if (faulty) refuse({ code: 'fastener-faulty', tightening: id, ...faulty })
  if (suspect) refuse({ code: 'angle-suspect', tightening: id, fastener: suspect.fastener })
  const { pass, fastener: next } = inTurn(turned, fastener)
  return { type: 'tightened', tightening: id, pass, fastener: next }
}

/** A fastener never came to its torque, or lets go of it: a fault that blocks, whatever pass it is in. */
export function missTorque(
  state: State,
  { tightening: asked, fastener, says }: Of<'miss-torque'>,
): EntryBodyOf<'torque-missed'> {
  const tightening =
    asked === undefined
      ? openTightening(state)
      : (state.tightenings.get(asked) ?? unknown('tightening', asked))
  const { id, piece, order } = tightening
  refuseUnlessUnderWay(knownStep(state, tightening.step))
  const faulty = faultIn(state, id)
  if (faulty) refuse({ code: 'fastener-faulty', tightening: id, ...faulty })
  const name = fastener ?? nextTurn(tightening)?.fastener ?? refuse({ code: 'all-turned', tightening: id })
  if (!order.includes(name)) refuse({ code: 'no-such-fastener', tightening: id, fastener: name })
  const pattern = patternOf(state, piece)
  const at = 'code' in pattern ? undefined : pattern.places.find(({ position }) => position === name)
  return {
    type: 'torque-missed',
    tightening: id,
    fastener: name,
    fault: {
      id: `x${state.dealt.fault + 1}`,
      kind: 'no-torque',
      piece: at?.piece ?? piece,
      count: 1,
    },
    says: given(says, 'reason'),
  }
}

/** A bolt that an interruption left in doubt: the user says whether it had been turned. */
export function settleAngle(
  state: State,
  { tightening: id, turned, reason }: Of<'settle-angle'>,
): EntryBodyOf<'angle-settled'> {
  const tightening = state.tightenings.get(id) ?? unknown('tightening', id)
  if (!tightening.suspect) refuse({ code: 'not-suspect', tightening: id })
  return {
    type: 'angle-settled',
    tightening: id,
    fastener: tightening.suspect.fastener,
    turned,
    reason: given(reason, 'reason'),
  }
}

/** All fasteners backed off: every pass is to be done again. */
export function slacken(state: State, { tightening: id, reason }: Of<'slacken'>): EntryBodyOf<'slackened'> {
  const tightening = state.tightenings.get(id) ?? unknown('tightening', id)
  refuseUnlessUnderWay(knownStep(state, tightening.step))
  return { type: 'slackened', tightening: id, reason: given(reason, 'reason') }
}

/** Whether the threads are dry, oiled and the like. */
export function sayCondition(
  state: State,
  { tightening, condition }: Of<'say-condition'>,
): EntryBodyOf<'condition-said'> {
  if (!state.tightenings.has(tightening)) unknown('tightening', tightening)
  return { type: 'condition-said', tightening, condition: given(condition, 'text') }
}

const MOST = 1e9

/** The torque wrench in use, from which the setting is worked out. */
export function chooseWrench(
  state: State,
  { tightening, wrench }: Of<'choose-wrench'>,
): EntryBodyOf<'wrench-chosen'> {
  if (!state.tightenings.has(tightening)) unknown('tightening', tightening)
  const { leastNewtonMetres, mostNewtonMetres, leverMm, adapterMm, angleDegrees } = wrench
  const wrong = [
    ...[leastNewtonMetres, mostNewtonMetres, leverMm].filter((value = 1) => !(value > 0 && value < MOST)),
    ...[adapterMm].filter((value = 0) => !(value >= 0 && value < MOST)),
    ...[angleDegrees].filter((value = 0) => !(Math.abs(value) < MOST)),
  ][0]
  if (wrong !== undefined) refuse({ code: 'count-wrong', count: wrong })
  return { type: 'wrench-chosen', tightening, wrench: { ...wrench, typed: given(wrench.typed, 'text') } }
}

/** The next in order; a name that is another's is refused at once, as done twice or as skipped. */
function inTurn(turned: (TighteningFacts | LooseningFacts) & Tightening, fastener: string | undefined) {
  const { id: tightening, order, done } = turned
  const next = nextTurn(turned)
  if (!next) refuse({ code: 'all-turned', tightening })
  if (fastener !== undefined && fastener !== next.fastener) {
    if (!order.includes(fastener)) refuse({ code: 'no-such-fastener', tightening, fastener })
    const isDone = done[next.pass]?.has(fastener)
    refuse({ code: isDone ? 'turned-already' : 'out-of-turn', tightening, fastener, next: next.fastener })
  }
  return next
}

/** The fault that is open in a tightening, for which work on it waits. */
function faultIn(state: State, id: TighteningId) {
  for (const fault of state.faults.values()) {
    if (fault.in?.tightening === id && fault.settled === null && !state.overrides.has(fault.id))
      return { fastener: fault.in.fastener, fault: fault.id }
  }
  return null
}

function membersOf(state: State, id: TighteningFacts['piece']) {
  const account = knownPiece(state, id)
  return isMatched(account.piece) ? matesOf(state, account) : [account]
}

function isLoosening(turned: TighteningFacts | LooseningFacts): turned is LooseningFacts {
  return turned.id.startsWith('l')
}

function known(state: State, id: TighteningId | LooseningId): TighteningFacts | LooseningFacts {
  if (id.startsWith('l')) return state.loosenings.get(id as LooseningId) ?? unknown('loosening', id)
  return state.tightenings.get(id as TighteningId) ?? unknown('tightening', id)
}

/** On the way back the tightening at hand; while things come off, the loosening. */
function current(state: State): TighteningFacts | LooseningFacts {
  if (state.build !== null) return openTightening(state)
  const step = state.strip
  const open = [...state.loosenings.values()].find((each) => each.step === step && nextTurn(each))
  return open ?? openTightening(state)
}

function openTightening(state: State): TighteningFacts {
  const step = state.build
  const open = [...state.tightenings.values()].flatMap((tightening) => {
    const next = tightening.step === step ? nextTurn(tightening) : null
    return next ? [{ tightening, next }] : []
  })
  const at = open.find(({ next }) => isHalfWay(next)) ?? open[0]
  return at?.tightening ?? refuse({ code: 'no-tightening', step })
}
