import type { Account, Move } from '../../ledger/account.ts'
import { balance } from '../../ledger/ledger.ts'
import { belongsInToolbox, isMatched } from '../../ledger/piece.ts'
import type { StepFacts } from '../../plan/facts.ts'
import { Gates } from '../../plan/gates.ts'
import { builtOnTop } from '../../plan/order.ts'
import { notHome, type Reason } from '../../plan/reasons.ts'
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
