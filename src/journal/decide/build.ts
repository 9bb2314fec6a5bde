import type { Account, Move } from '../../ledger/account.ts'
import { balance } from '../../ledger/ledger.ts'
import { belongsInToolbox, isMatched } from '../../ledger/piece.ts'
import { consumableReasons, curing } from '../../plan/consumables.ts'
import { isEasedOn } from '../../plan/eased.ts'
import type { DecisionTarget, StepFacts } from '../../plan/facts.ts'
import { builtOnTop } from '../../plan/order.ts'
import { isAnswerDue } from '../../plan/outings.ts'
import { Gates, isJudging, notHome, type Reason } from '../../plan/reasons.ts'
import { secondReasons } from '../../plan/second-looks.ts'
import { nextTurn } from '../../plan/tightening.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { Gate } from '../refusal.ts'
import type { State } from '../state.ts'
import { fittingMoves } from './fitting.ts'
import { given, knownPiece, knownStep, lawful, refuse, unknown } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** A step is taken up on the way back: refused with every reason while it is blocked. */
export function decideBuild(state: State, { step: no }: Of<'begin-build'>): EntryBodyOf<'build-began'> {
  const step = knownStep(state, no)
  if (step.built === 'done') refuse({ code: 'step-done', step: no })
  if (step.built === 'underway') refuse({ code: 'step-under-way', step: no })
  pass(no, 'start', new Gates(state).start(no))
  return { type: 'build-began', step: no }
}

/** Fits pieces of one step, and takes the step up when it is ready. Matched pieces come one at a time. */
export function decideFit(state: State, { step: asked, fittings }: Of<'fit'>): EntryBodyOf<'fitted'> {
  const accounts = fittings.map(({ piece }) => knownPiece(state, piece))
  const first = accounts[0] ?? refuse({ code: 'no-build-step' })
  const no = asked ?? first.piece.step
  for (const { piece } of accounts) {
    if (belongsInToolbox(piece)) refuse({ code: 'not-for-home', piece: piece.id })
    if (piece.step !== no) refuse({ code: 'not-in-step', piece: piece.id, step: no, own: piece.step })
  }
  const matched = accounts.filter(({ piece }) => isMatched(piece)).map(({ piece }) => piece.id)
  if (matched.length > 1) refuse({ code: 'one-by-one', pieces: matched })

  const step = knownStep(state, no)
  if (step.built === 'done') refuse({ code: 'step-done', step: no })
  const began = step.built !== 'underway'
  // The wrong place is said first: it is what the hand is about to do.
  const moves = fittings.flatMap((fitting, index) => fittingMoves(state, fitting, accounts[index] as Account))
  if (began) pass(no, 'start', new Gates(state).start(no))
  return { type: 'fitted', step: no, began, moves: lawful(state, moves) }
}

/** A mark is confirmed while its step is under way, and only once the piece that carries it is home. */
export function confirmMark(state: State, { mark: id }: Of<'confirm'>): EntryBodyOf<'confirmed'> {
  const mark = state.marks.get(id) ?? unknown('mark', id)
  if (mark.confirmed) refuse({ code: 'already', what: 'confirmed', id })
  refuseUnlessUnderWay(knownStep(state, mark.step))
  if (mark.piece) pass(mark.step, 'finish', notHome(state, knownPiece(state, mark.piece)))
  return { type: 'confirmed', mark: id }
}

/** The last look before a step that hides others: refused while anything beneath is not in order. */
export function decideLook(state: State, { step: no }: Of<'look'>): EntryBodyOf<'looked'> {
  const step = knownStep(state, no)
  if (step.built === 'done') refuse({ code: 'step-done', step: no })
  if (step.looked) refuse({ code: 'already', what: 'looked', id: String(no) })
  const gates = new Gates(state)
  const before = state.passedOver.get(`start ${no}`)?.has('step-before') ? [] : gates.stepsBefore(no)
  pass(no, 'look', [...gates.look(no), ...before])
  return { type: 'looked', step: no }
}

/** One full turn by hand in a step that counts them; the step is taken up with the first. */
export function turnOver(state: State, { step: asked }: Of<'turn-over'>): EntryBodyOf<'turned-over'> {
  const no = asked ?? state.build ?? turnStep(state) ?? refuse({ code: 'no-build-step' })
  const step = knownStep(state, no)
  if (!isTurned(step)) refuse({ code: 'not-turned-over', step: no })
  if (step.built === 'done') refuse({ code: 'step-done', step: no })
  const began = step.built !== 'underway'
  if (began) pass(no, 'start', new Gates(state).start(no))
  return { type: 'turned-over', step: no, began }
}

/** The step of turning over by hand that is ready, where there is one only. */
function turnStep(state: State): number | undefined {
  const ready = new Gates(state).ready().filter((no) => isTurned(knownStep(state, no)))
  return ready.length === 1 ? ready[0] : undefined
}

/** Turns may be asked for in a step of another kind, too, as in a check of the timing marks. */
function isTurned({ kind, turns }: StepFacts): boolean {
  return kind === 'turn' || turns !== undefined
}

/** Closes a step. One that asks for nothing to be fitted may be closed as soon as it could start. */
export function decideClose(
  state: State,
  { step: asked, result }: Of<'close-step'>,
): EntryBodyOf<'build-done'> {
  const no = asked ?? state.build ?? refuse({ code: 'no-build-step' })
  const step = knownStep(state, no)
  if (step.built === 'done') refuse({ code: 'step-done', step: no })
  const gates = new Gates(state)
  if (step.built !== 'underway') pass(no, 'start', gates.start(no))
  pass(no, 'finish', gates.finish(no))
  // A measurement that is not written down was not taken.
  const isMeasured = [...state.measures.values()].some((measure) => measure.step === no)
  const found = step.kind === 'measure' && !isMeasured ? given(result, 'result') : result?.trim()
  return { type: 'build-done', step: no, result: found || undefined }
}

/** A check fails: the steps that the user points at reopen, with all that was built on top of them. */
export function decideFail(state: State, { step: no, result, steps }: Of<'fail'>): EntryBodyOf<'failed'> {
  const step = knownStep(state, no)
  if (step.built !== 'underway' && step.built !== 'done') pass(no, 'start', new Gates(state).start(no))
  const reopened = steps.length === 0 ? { steps: [], moves: [] } : reopening(state, steps)
  return { type: 'failed', step: no, result: given(result, 'result'), ...reopened }
}

/** Steps are done again, with all that was built on top of them. */
export function decideReopen(state: State, { steps, reason }: Of<'reopen'>): EntryBodyOf<'reopened'> {
  const reopened = reopening(state, steps)
  return { type: 'reopened', ...reopened, reason: given(reason, 'reason') }
}

/** A gate or a thing owed is passed over, with a reason, which then stands wherever it is shown. */
export function decideOverride(state: State, { target, reason }: Of<'override'>): EntryBodyOf<'overridden'> {
  const passed = state.passedOver.get(target)
  const gates = [...new Set(overridable(state, target))].filter((code) => !passed?.has(code))
  if (gates.length === 0) refuse({ code: 'nothing-to-override', target })
  return { type: 'overridden', target, reason: given(reason, 'reason'), gates }
}

function pass(step: number, gate: Gate, reasons: Reason[]): void {
  if (reasons.length > 0) refuse({ code: 'step-blocked', step, gate, reasons })
}

/** Refuses work in a step that was not taken up, or is closed. */
export function refuseUnlessUnderWay({ no, built }: StepFacts): void {
  if (built === 'done') refuse({ code: 'step-done', step: no })
  if (built !== 'underway') refuse({ code: 'step-not-begun', step: no, built })
}

function reopening(state: State, steps: number[]): { steps: number[]; moves: Move[] } {
  for (const no of steps) knownStep(state, no)
  const gates = new Gates(state)
  const all = [...new Set([...steps, ...builtOnTop(gates.needs, steps)])].filter((no) => gates.isBuilt(no))
  if (all.length === 0) refuse({ code: 'nothing-to-reopen', steps })
  const reopened = new Set(all)
  const moves: Move[] = []
  for (const { piece } of state.ledger.accounts.values()) {
    if (belongsInToolbox(piece) || !reopened.has(piece.step)) continue
    const count = balance(state.ledger, piece.id, 'machine')
    if (count > 0) moves.push({ piece: piece.id, count, from: 'machine', to: 'bench' })
  }
  return { steps: all.sort((a, b) => a - b), moves }
}

function codesOf(reasons: Reason[]): string[] {
  return reasons.filter((reason) => !isJudging(reason)).map(({ code }) => code)
}

/** What of a check, an outing or something put on could be passed over; null for any other target. */
function overridableWaiting(state: State, target: DecisionTarget): string[] | null {
  if (target.startsWith('k')) {
    const check = state.checks.get(target as `k${number}`) ?? unknown('check', target)
    return check.done === null ? ['check-due'] : []
  }
  if (target.startsWith('b')) {
    const outing = state.outings.get(target as `b${number}`) ?? unknown('outing', target)
    return isAnswerDue(state, outing) ? ['out-unanswered'] : []
  }
  if (!/^s\d/.test(target)) return null
  const consumable = state.consumables.get(target as `s${number}`) ?? unknown('consumable', target)
  const contents = new Gates(state).contentsOf(consumable.step)
  const waits = [
    ...consumableReasons(state, contents),
    ...consumable.before.flatMap((each) => curing(state, each)),
  ]
  return codesOf(waits.filter((reason) => 'consumable' in reason && reason.consumable === consumable.id))
}

function overridable(state: State, target: DecisionTarget): string[] {
  const gate = /^(start|finish|look|check) (\d+)$/.exec(target)
  if (gate) {
    const step = knownStep(state, Number(gate[2]))
    const gates = new Gates(state)
    if (step.built === 'done' && gate[1] !== 'check') refuse({ code: 'step-done', step: step.no })
    if (gate[1] === 'start' && step.built === 'underway') refuse({ code: 'step-under-way', step: step.no })
    if (gate[1] === 'start') return codesOf(gates.start(step.no))
    if (gate[1] === 'finish') return codesOf(gates.finish(step.no))
    if (gate[1] === 'look') return gates.lookDue(step.no).map(({ code }) => code)
    const second = secondReasons(state, step.no, gates.contentsOf(step.no))
    return step.way === 'both' ? codesOf(second) : ['check-open']
  }
  const waiting = overridableWaiting(state, target)
  if (waiting) return waiting
  const id = target as `${'m' | 't' | 'l' | 'f' | 'x'}${number}`
  if (id.startsWith('m'))
    return (state.marks.get(id as `m${number}`) ?? unknown('mark', id)).confirmed ? [] : ['mark-open']
  if (id.startsWith('f')) {
    return (state.fluids.get(id as `f${number}`) ?? unknown('fluid', id)).filledLitres === null
      ? ['fluid-open']
      : []
  }
  if (id.startsWith('x'))
    return (state.faults.get(id as `x${number}`) ?? unknown('fault', id)).settled === null
      ? ['fault-open']
      : []
  if (id.startsWith('l')) {
    const loosening = state.loosenings.get(id as `l${number}`) ?? unknown('loosening', id)
    return isEasedOn(state, loosening) ? ['eased-on'] : []
  }
  const tightening = state.tightenings.get(id as `t${number}`) ?? unknown('tightening', id)
  // A bolt that may have been turned twice cannot be waved through.
  if (tightening.suspect)
    refuse({ code: 'angle-suspect', tightening: tightening.id, fastener: tightening.suspect.fastener })
  return nextTurn(tightening) ? ['tighten-open'] : []
}
