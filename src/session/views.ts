import type { ContainerState, State, StopCard } from '../journal/state.ts'
import type { Account } from '../ledger/account.ts'
import { type Holding, holdingsAt, holdingsIn, placesOf } from '../ledger/ledger.ts'
import { belongsInToolbox, isMatched, type Piece } from '../ledger/piece.ts'
import { containerOf } from '../ledger/place.ts'
import { outOfToolbox, owedAtHome, withinReach } from '../plan/contents.ts'
import type { FaultFacts, FluidFacts, MarkFacts, StepFacts, TighteningFacts } from '../plan/facts.ts'
import { type Leftover, leftovers } from '../plan/leftovers.ts'
import { beneath, buildOrder } from '../plan/order.ts'
import { type Phase, phaseOf } from '../plan/phase.ts'
import type { Reason } from '../plan/reasons.ts'
import { isHalfWay, isUnderWay, type NextTurn, nextTurn } from '../plan/tightening.ts'
import { isDried } from '../plan/waiting/consumables.ts'
import type { ConsumableFacts } from '../plan/waiting/waiting-facts.ts'
import { type DueView, dueView } from './due-view.ts'
import { behindWhatTheyHold } from './hold-down.ts'
import { type OpenLoosening, openLoosening } from './open-loosening.ts'
import type { Session } from './session.ts'
import type { Entry } from './stored-entry.ts'

/** How a step of the way back stands. `idle` has nothing to put back. */
export type StepStanding = 'stripping' | 'ready' | 'blocked' | 'underway' | 'done' | 'redo' | 'idle'

export interface PlanRow {
  step: StepFacts
  standing: StepStanding
  /** Reopened and waiting to be done again; then `standing` says whether it could start. */
  again: boolean
  reasons: Reason[]
  /** Overrides in force on the step's own gates. */
  overrides: string[]
}

/** The way back in an order in which it can be done, each step with how it stands and why. */
export function planRows(session: Session): PlanRow[] {
  const { state } = session
  const gates = session.gates()
  const result = buildOrder(state.steps)
  const order = 'order' in result ? result.order : [...state.steps.keys()]
  return order.flatMap((no) => {
    const step = state.steps.get(no)
    if (!step) return []
    const reasons = step.built === 'done' || step.built === 'underway' ? [] : gates.start(no)
    const overrides = (['start', 'finish', 'look', 'check'] as const).flatMap(
      (gate) => state.overrides.get(`${gate} ${no}`) ?? [],
    )
    return [
      {
        step,
        standing: standing(step, gates.isDone(no), reasons),
        again: step.built === 'redo',
        reasons,
        overrides,
      },
    ]
  })
}

function standing(step: StepFacts, isDone: boolean, reasons: Reason[]): StepStanding {
  if (step.stripping) return 'stripping'
  if (step.built === 'done' || step.built === 'underway') return step.built
  if (isDone) return 'idle'
  if (reasons.length > 0) return 'blocked'
  return step.built === 'redo' ? 'redo' : 'ready'
}

/** One thing to do in a build step, in the order in which hands would do it. */
export type Todo =
  | { kind: 'take-out'; account: Account; count: number }
  | {
      kind: 'fit'
      account: Account
      owed: number
      lies: { place: Holding['place']; count: number }[]
      matched: boolean
    }
  | { kind: 'confirm'; mark: MarkFacts }
  | { kind: 'turn'; tightening: TighteningFacts; next: NextTurn }
  /** A fastener that never came to its torque: its joint waits until that is put right. */
  | { kind: 'settle'; fault: FaultFacts }
  | { kind: 'turn-over'; step: number; turned: number; turns: number }
  | { kind: 'fill'; fluid: FluidFacts }
  /** Something is to be put on before the pieces go on. */
  | { kind: 'apply'; consumable: ConsumableFacts }

/** What is still to be done in a step before it can be closed. */
export function todoOf(session: Session, no: number): Todo[] {
  const { state } = session
  const contents = session.gates().contentsOf(no)
  const now = session.stateNow()
  const todo: Todo[] = []
  for (const account of contents.aids) {
    for (const { place, count } of outOfToolbox(state, account)) {
      if (place === 'machine') todo.push({ kind: 'take-out', account, count })
    }
  }
  for (const consumable of contents.consumables) {
    const isDue = consumable.applied === null || isDried(now, consumable)
    if (isDue && !state.overrides.has(consumable.id)) todo.push({ kind: 'apply', consumable })
  }
  for (const account of behindWhatTheyHold(lastOffFirst(state, contents.pieces))) {
    const owed = owedAtHome(state, account)
    if (owed > 0)
      todo.push({
        kind: 'fit',
        account,
        owed,
        lies: withinReach(state, account),
        matched: isMatched(account.piece),
      })
  }
  for (const mark of contents.marks)
    if (!mark.confirmed && !state.overrides.has(mark.id)) todo.push({ kind: 'confirm', mark })
  for (const tightening of contents.tightenings) {
    const next = nextTurn(tightening)
    if (!next || state.overrides.has(tightening.id)) continue
    const fault = contents.faults.find(
      (each) =>
        each.in?.tightening === tightening.id && each.settled === null && !state.overrides.has(each.id),
    )
    todo.push(fault ? { kind: 'settle', fault } : { kind: 'turn', tightening, next })
  }
  const { turns = 0, turned = 0 } = state.steps.get(no) ?? {}
  if (turned < turns) todo.push({ kind: 'turn-over', step: no, turned, turns })
  for (const fluid of contents.fluids) {
    if (fluid.filledLitres === null && !state.overrides.has(fluid.id)) todo.push({ kind: 'fill', fluid })
  }
  // Bolts that are half way through their passes are not left for anything else.
  return [...todo.filter(isHalfTurned), ...todo.filter((each) => !isHalfTurned(each))]
}

function isHalfTurned(todo: Todo): boolean {
  return todo.kind === 'turn' && isHalfWay(todo.next)
}

/** The aid to take out where nothing else keeps a step from its last look: a rag, a pin or a plug beneath it. */
export function aidInTheWay({ state }: Session, { reasons }: Pick<PlanRow, 'reasons'>): Todo | null {
  if (!reasons.every(({ code }) => code === 'aid-in' || code === 'look-due')) return null
  for (const reason of reasons) {
    const account = reason.code === 'aid-in' ? state.ledger.accounts.get(reason.piece) : undefined
    if (account && reason.code === 'aid-in') return { kind: 'take-out', account, count: reason.count }
  }
  return null
}

/** What came off last goes back first; a matched set keeps the order of its positions. */
function lastOffFirst(state: State, accounts: readonly Account[]): Account[] {
  const lots = new Map<string, { account: Account; first: number }[]>()
  for (const account of accounts) {
    const { id, set } = account.piece
    // Intake and exhaust caps may go by the same positions.
    const name = set === undefined ? id : `${set} ${account.home.at}`
    const lot = lots.get(name) ?? []
    lots.set(name, lot)
    lot.push({ account, first: firstAtHome(state, account) })
  }
  for (const lot of lots.values()) lot.sort((a, b) => a.first - b.first)
  return [...lots.values()]
    .sort(([a], [b]) => (b?.first ?? 0) - (a?.first ?? 0))
    .flatMap((lot) => lot.map(({ account }) => account))
}

/** The number of the piece that first had this home: whatever has it now goes back where that one came off. */
function firstAtHome(state: State, { piece, home }: Account): number {
  if (home.position === undefined) return firstOf(state, piece)
  for (const { piece: other } of state.ledger.accounts.values()) {
    const isHere = other.home.position === home.position && other.home.at === home.at
    if (isHere && other.step === piece.step && other.name === piece.name) return numberOf(other)
  }
  return numberOf(piece)
}

/** Follows the pieces that were replaced back to the one that came off. */
function firstOf(state: State, piece: Piece): number {
  const old = piece.replaces === undefined ? undefined : state.ledger.accounts.get(piece.replaces)
  return old ? firstOf(state, old.piece) : numberOf(piece)
}

function numberOf({ id }: Piece): number {
  return Number(id.slice(1))
}

export interface ContainerRow {
  container: ContainerState
  holdings: Holding[]
  /** Containers that stand in it. */
  holds: number[]
}

/** Every container that is not void, with what lies in it. */
export function containerRows(state: State): ContainerRow[] {
  const rows = new Map<number, ContainerRow>()
  for (const container of state.containers.values()) {
    if (container.voided === null)
      rows.set(container.no, { container, holdings: holdingsIn(state.ledger, container.no), holds: [] })
  }
  for (const { container } of rows.values()) {
    if (container.inside !== null) rows.get(container.inside)?.holds.push(container.no)
  }
  return [...rows.values()]
}

/** The steps that a step hides: all that lies beneath it, near and far. */
export function stepsHiddenBy(session: Session, no: number): number[] {
  return [...beneath(session.gates().needs, no)]
}

/** The containers that hold what belongs to a step, so that closing it can look into each of them. */
export function containersOfStep(state: State, no: number): number[] {
  const found = new Set<number>()
  for (const account of state.ledger.accounts.values()) {
    if (account.piece.step !== no) continue
    for (const { place } of placesOf(state.ledger, account.piece.id)) {
      const container = containerOf(place)
      if (container !== null) found.add(container)
    }
  }
  return [...found].sort((a, b) => a - b)
}

/**
 * Whether an entry was taken back, by the numbers of those in force. Labels that were printed stay printed, and an
 * undo is never taken back itself.
 */
export function isTakenBack(inForce: ReadonlySet<number>, { n, type }: Entry): boolean {
  return !inForce.has(n) && type !== 'undone' && type !== 'redone' && type !== 'labels-dealt'
}

/** Where the job stands: what a person who comes back wants to see first. */
export interface Card {
  phase: Phase
  stopped: StopCard | null
  strip: number | null
  build: number | null
  /** Loose on the bench, pieces and tools. */
  bench: Holding[]
  /** Tightenings broken off in the middle, with the fastener that is next. */
  halfway: { tightening: TighteningFacts; next: NextTurn }[]
  /** Other steps that were taken up and left, and whose tightening does not say so. */
  begun: number[]
  /** Pieces off the machine and not yet back. */
  off: number
  /** What is out, or ordered, and should be here by now. */
  late: DueView['late']
  /** Steps that could start now. */
  ready: number[]
  next: NextThing
}

export type NextThing =
  | { kind: 'begin' }
  /** `ease`: what is eased next before it comes off, where a loosening is under way. */
  | { kind: 'strip'; step: number; ease?: OpenLoosening }
  | { kind: 'todo'; step: number; todo: Todo }
  | { kind: 'close'; step: number }
  | { kind: 'look'; step: number }
  | { kind: 'take'; step: number }
  | { kind: 'blocked'; step: number; reasons: Reason[] }
  | { kind: 'clear' }
  | { kind: 'leftovers'; leftovers: Leftover[] }
  | { kind: 'start' }
  | { kind: 'check'; step: number }
  | { kind: 'close-job' }
  | { kind: 'nothing' }

/** Gathers what a person who comes back wants to see first. */
export function cardOf(session: Session): Card {
  const { state } = session
  const halfway = [...state.tightenings.values()].flatMap((tightening) => {
    const next = nextTurn(tightening)
    return next && isHalfWay(next) ? [{ tightening, next }] : []
  })
  const begun = [...state.steps.values()].filter(
    ({ no, built }) =>
      built === 'underway' && no !== state.build && !halfway.some(({ tightening: { step } }) => step === no),
  )
  let off = 0
  for (const account of state.ledger.accounts.values()) {
    if (!belongsInToolbox(account.piece)) off += Math.max(0, owedAtHome(state, account))
  }
  return {
    phase: phaseOf(state),
    stopped: state.card,
    strip: state.strip,
    build: state.build,
    bench: holdingsAt(state.ledger, 'bench'),
    halfway,
    begun: begun.map(({ no }) => no),
    off,
    late: dueView(session.stateNow()).late,
    ready: session.gates().ready(),
    next: nextThing(session),
  }
}

/** Whether work was under way when the program ended without a word: then the record must say so. */
export function brokenOff(state: State): boolean {
  if (state.card !== null) return false
  const isAtWork = (no: number) => state.steps.get(no)?.built === 'underway'
  return (
    [...state.tightenings.values()].some((each) => isAtWork(each.step) && isUnderWay(each)) ||
    [...state.steps.values()].some(({ no, turned }) => turned > 0 && isAtWork(no))
  )
}

/** The trial balance of the job as it stands. */
export function trialBalance(session: Session): Leftover[] {
  return leftovers(session.gates())
}

/** Whether nothing was recorded of the machine: then an empty balance says nothing about it. */
export function isEmptyRecord({ ledger, steps }: Session['state']): boolean {
  return ledger.accounts.size === 0 && steps.size === 0
}

function nextThing(session: Session): NextThing {
  const { state } = session
  if (state.closed) return { kind: 'nothing' }
  // What came off again after the start goes back as before it.
  if (state.started && trialBalance(session).length === 0) return afterStart(session)
  if (state.cleared && !state.started) return { kind: 'start' }
  if (state.strip !== null && state.build === null) {
    const ease = openLoosening(state)
    return { kind: 'strip', step: state.strip, ...(ease && { ease }) }
  }
  const { build } = state
  if (build !== null) {
    const todo = todoOf(session, build)[0]
    if (todo) return { kind: 'todo', step: build, todo }
    // Something beneath was touched after the look: it is looked at once more before it is closed.
    const held = session.gates().finish(build)
    const isLooked = held.length === 0 || held.some(({ code }) => code !== 'look-due')
    return { kind: isLooked ? 'close' : 'look', step: build }
  }
  if (state.steps.size === 0) return { kind: 'begin' }
  const rows = planRows(session).filter(
    ({ standing, step }) => step.way !== 'after-start' && standing !== 'done' && standing !== 'idle',
  )
  const ready = rows.find(({ standing }) => standing === 'ready' || standing === 'redo')
  if (ready) return { kind: 'take', step: ready.step.no }
  const first = rows[0]
  if (first) {
    const aid = aidInTheWay(session, first)
    if (aid) return { kind: 'todo', step: first.step.no, todo: aid }
    const looking = first.reasons.every(({ code }) => code === 'look-due')
    return looking
      ? { kind: 'look', step: first.step.no }
      : { kind: 'blocked', step: first.step.no, reasons: first.reasons }
  }
  const open = trialBalance(session)
  return open.length > 0 ? { kind: 'leftovers', leftovers: open } : { kind: 'clear' }
}

function afterStart(session: Session): NextThing {
  const due = [...session.state.steps.values()].find(
    (step) =>
      step.way === 'after-start' && step.built !== 'done' && !session.state.overrides.has(`check ${step.no}`),
  )
  return due ? { kind: 'check', step: due.no } : { kind: 'close-job' }
}
