import { balance } from '../ledger/ledger.ts'
import { belongsInToolbox, type PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import { outOfToolbox, owedAtHome, owing } from './contents.ts'
import { isEasedOn } from './eased.ts'
import type { DifferenceId, FaultId, FluidId, LeftOutId, LooseningId, MarkId, TighteningId } from './facts.ts'
import type { Gates } from './gates.ts'
import type { JudgingReason } from './judging/judging.ts'
import { builtOnTop } from './order.ts'
import { nextTurn } from './tightening.ts'
import { consumableReasons, curing } from './waiting/consumables.ts'
import { isUnanswered } from './waiting/outings.ts'
import { secondReasons } from './waiting/second-looks.ts'
import type { WaitingReason } from './waiting/waiting-reasons.ts'

/** One thing that stands between the machine and its first start. */
export type Leftover =
  | {
      code: 'piece-off'
      piece: PieceId
      count: number
      place: Place
      step: number
      /** The steps to undo to reach its home, in the order of undoing. */
      undo: number[]
    }
  | { code: 'piece-short'; piece: PieceId; count: number; step: number; undo: number[] }
  | { code: 'piece-lost'; piece: PieceId; count: number }
  | { code: 'piece-left-in'; piece: PieceId; count: number }
  | { code: 'old-lying'; piece: PieceId; count: number; place: Place }
  | { code: 'aid-in' | 'tool-out'; piece: PieceId; count: number; place: Place; step: number; undo: number[] }
  | { code: 'fluid-open'; fluid: FluidId }
  | { code: 'mark-open'; mark: MarkId }
  | { code: 'tighten-open'; tightening: TighteningId }
  /** Eased to come off, and still on the machine: loose. */
  | { code: 'eased-on'; loosening: LooseningId; step: number }
  | { code: 'fault-open'; fault: FaultId }
  | { code: 'count-open'; difference: DifferenceId }
  | { code: 'left-out-open'; leftOut: LeftOutId }
  | { code: 'step-open'; step: number }
  /** `undo`: of a piece on the machine, the steps to undo to reach it. */
  | (JudgingReason & { undo: number[] })
  | WaitingReason

/**
 * The trial balance: everything that is not as it must be at the first start. Empty means clear.
 * Order: what hides deepest first, so that the first line is the one that costs most to forget.
 */
export function leftovers(gates: Gates): Leftover[] {
  return [
    ...piecesOff(gates),
    ...obligations(gates),
    ...notAccepted(gates),
    ...waits(gates),
    ...notSettled(gates),
    ...openSteps(gates),
  ]
}

/** The steps to undo, last built first, before the home of a step can be reached. */
export function undoToReach(gates: Gates, step: number): number[] {
  const onTop = [...builtOnTop(gates.needs, [step])].filter((no) => gates.isBuilt(no))
  if (gates.facts.steps.get(step)?.built === 'done') onTop.push(step)
  return lastBuiltFirst(gates, onTop)
}

function lastBuiltFirst(gates: Gates, steps: number[]): number[] {
  const depth = new Map<number, number>()
  const measure = (no: number): number => {
    const known = depth.get(no)
    if (known !== undefined) return known
    depth.set(no, 0)
    const value = Math.max(0, ...[...(gates.needs.get(no) ?? [])].map((lower) => measure(lower) + 1))
    depth.set(no, value)
    return value
  }
  return [...steps].sort((a, b) => measure(b) - measure(a) || a - b)
}

function piecesOff(gates: Gates): Leftover[] {
  const { facts } = gates
  const found: Leftover[] = []
  const undoOf = new Map<number, number[]>()
  for (const account of facts.ledger.accounts.values()) {
    const { piece } = account
    // Worked out once for each step: a job has far more pieces than steps.
    const reach = () => {
      const undo = undoOf.get(piece.step) ?? undoToReach(gates, piece.step)
      undoOf.set(piece.step, undo)
      return undo
    }
    if (belongsInToolbox(piece)) {
      for (const { place, count } of outOfToolbox(facts, account)) {
        const code = place === 'machine' ? 'aid-in' : 'tool-out'
        const undo = place === 'machine' ? reach() : []
        found.push({ code, piece: piece.id, count, place, step: piece.step, undo })
      }
    } else {
      const left = -owedAtHome(facts, account)
      if (left > 0) found.push({ code: 'piece-left-in', piece: piece.id, count: left })
      const { lies, extra, short } = owing(facts, account)
      for (const { place, count } of lies)
        found.push({ code: 'piece-off', piece: piece.id, count, place, step: piece.step, undo: reach() })
      for (const { place, count } of extra) found.push({ code: 'old-lying', piece: piece.id, count, place })
      if (short > 0)
        found.push({ code: 'piece-short', piece: piece.id, count: short, step: piece.step, undo: reach() })
    }
    const lost = balance(facts.ledger, piece.id, 'lost') - (facts.lostAccepted.get(piece.id) ?? 0)
    if (lost > 0) found.push({ code: 'piece-lost', piece: piece.id, count: lost })
  }
  return found.sort((a, b) => undoLength(b) - undoLength(a))
}

function undoLength(leftover: Leftover): number {
  return 'undo' in leftover ? leftover.undo.length : 0
}

function obligations(gates: Gates): Leftover[] {
  const { fluids, marks, tightenings, loosenings, faults, differences, overrides } = gates.facts
  const found: Leftover[] = []
  for (const fluid of fluids.values()) {
    if (fluid.filledLitres === null && !overrides.has(fluid.id))
      found.push({ code: 'fluid-open', fluid: fluid.id })
  }
  for (const mark of marks.values()) {
    if (!mark.confirmed && !overrides.has(mark.id)) found.push({ code: 'mark-open', mark: mark.id })
  }
  for (const tightening of tightenings.values()) {
    if (nextTurn(tightening) && !overrides.has(tightening.id)) {
      found.push({ code: 'tighten-open', tightening: tightening.id })
    }
  }
  for (const loosening of loosenings.values()) {
    const { id, step } = loosening
    if (isEasedOn(gates.facts, loosening) && !overrides.has(id))
      found.push({ code: 'eased-on', loosening: id, step })
  }
  for (const fault of faults.values()) {
    if (fault.settled === null && !overrides.has(fault.id))
      found.push({ code: 'fault-open', fault: fault.id })
  }
  for (const difference of differences.values()) {
    if (difference.settled === null) found.push({ code: 'count-open', difference: difference.id })
  }
  return found
}

/** Pieces that belong on the machine and are not accepted, wherever they are. */
function notAccepted(gates: Gates): Leftover[] {
  const { facts } = gates
  return [...facts.ledger.accounts.values()]
    .filter(({ should }) => should > 0)
    .flatMap(({ piece, at }) => {
      const reasons = gates.judging(piece.id)
      const undo = reasons.length > 0 && at.has('machine') ? undoToReach(gates, piece.step) : []
      return reasons.map((reason) => ({ ...reason, undo }))
    })
}

/** What waits for a word, a second look, or for time to pass before the machine may run. */
function waits(gates: Gates): Leftover[] {
  const { facts } = gates
  const steps = [...facts.steps.values()].filter(({ way }) => way !== 'after-start')
  return [
    ...[...facts.outings.values()]
      .filter((outing) => isUnanswered(facts, outing))
      .map(({ id }) => ({ code: 'out-unanswered' as const, outing: id })),
    ...steps.flatMap(({ no }) => consumableReasons(facts, gates.contentsOf(no))),
    ...steps.flatMap(({ no }) => secondReasons(facts, no, gates.contentsOf(no))),
    ...curing(facts, 'start'),
  ]
}

/** What a copy of the job said that did not fit, and nobody has answered for. */
function notSettled({ facts }: Gates): Leftover[] {
  return [...facts.leftOut.values()]
    .filter(({ settled }) => settled === null)
    .map(({ id }) => ({ code: 'left-out-open', leftOut: id }))
}

function openSteps(gates: Gates): Leftover[] {
  return [...gates.facts.steps.values()]
    .filter((step) => step.way !== 'after-start' && !gates.isDone(step.no))
    .filter((step) => !gates.facts.overrides.has(`check ${step.no}`))
    .map((step) => ({ code: 'step-open', step: step.no }))
}
