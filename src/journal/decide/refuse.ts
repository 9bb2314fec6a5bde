import type { Account, Move } from '../../ledger/account.ts'
import { brokenLaws } from '../../ledger/laws.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { StepFacts } from '../../plan/facts.ts'
import type { Refusal, UnknownThing } from '../refusal.ts'
import type { ContainerState, State } from '../state.ts'

/** Carries a refusal up to `decide`, where it becomes a value again. It never leaves this folder. */
export class Refused extends Error {
  readonly refusal: Refusal
  constructor(refusal: Refusal) {
    super(refusal.code)
    this.name = 'Refused'
    this.refusal = refusal
  }
}

/** Ends a decision with a refusal. */
export function refuse(refusal: Refusal): never {
  throw new Refused(refusal)
}

/** The moves, if they break no law. */
export function lawful(state: State, moves: Move[]): Move[] {
  const violation = brokenLaws(state.ledger, moves)[0]
  if (violation) refuse({ code: 'law', violation })
  return moves
}

/** A whole number of pieces from 1 to 9999, or a refusal. */
export function wholeCount(count: number): number {
  return Number.isInteger(count) && count >= 1 && count <= 9999
    ? count
    : refuse({ code: 'count-wrong', count })
}

/** A text that is not empty, or a refusal that names what is missing. */
export function given(
  text: string | undefined,
  what: 'title' | 'name' | 'reason' | 'text' | 'result',
): string {
  const trimmed = text?.trim() ?? ''
  return trimmed === '' ? refuse({ code: 'text-missing', what }) : trimmed
}

/** The step of that number, or a refusal. */
export function knownStep(state: State, no: number): StepFacts {
  return state.steps.get(no) ?? unknown('step', no)
}

/** The container of that number, or a refusal; one with a void label is refused too, and an unused label. */
export function knownContainer(state: State, no: number): ContainerState {
  const container = knownLabel(state, no)
  return container ?? refuse({ code: 'label-unused', container: no })
}

/** The container of that number, null for an unused label, or a refusal; what is void is refused too. */
export function knownLabel(state: State, no: number): ContainerState | null {
  const container = state.containers.get(no)
  const { voided } = container ?? state.blanks.get(no) ?? unknown('container', no)
  if (voided) refuse({ code: 'container-void', container: no, insteadOf: voided.insteadOf ?? null })
  return container ?? null
}

/** The account of that piece, or a refusal. */
export function knownPiece(state: State, id: PieceId): Account {
  return state.ledger.accounts.get(id) ?? unknown('piece', id)
}

/** Refuses a number that was never dealt. */
export function unknown(what: UnknownThing, id: string | number): never {
  refuse({ code: 'unknown', what, id: String(id) })
}
