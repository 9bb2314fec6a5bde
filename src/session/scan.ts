import type { State } from '../journal/state.ts'
import { labelCode, MACHINE_NUMBER, nearCodes, readCode, stepNumber, stepOf } from '../label/code.ts'
import type { Account } from '../ledger/account.ts'
import { type Holding, holdingsIn } from '../ledger/ledger.ts'
import { belongsInToolbox, type PieceId } from '../ledger/piece.ts'
import { owedAtHome } from '../plan/contents.ts'
import { type JudgingReason, judgingReasons } from '../plan/judging/judging.ts'
import { undoToReach } from '../plan/leftovers.ts'
import type { Reason } from '../plan/reasons.ts'
import { ridersOf } from '../plan/riders.ts'
import { isLastRound } from './last-round.ts'
import type { Session } from './session.ts'

/** What a piece in a scanned container is for, and whether it could go home now. */
export interface ScannedPiece {
  piece: PieceId
  count: number
  /** Its slot or container, or the piece that it sits on. */
  place: Holding['place']
  step: number
  /** Whether its home still wants it. */
  wanted: boolean
}

export type Verdict =
  | { kind: 'fits-now'; step: number }
  | { kind: 'not-yet'; step: number; reasons: Reason[] }
  /** What it is for is not accepted: condemned or the wrong one, or something is still to be seen of it. */
  | { kind: 'not-good' | 'not-checked'; step: number; reasons: JudgingReason[] }
  /** Its home is closed over: `undo`, the steps to open to reach it, in the order of undoing. */
  | { kind: 'closed-over'; step: number; undo: number[] }
  /** It belongs to other steps than the one in hand. */
  | { kind: 'not-in-this-step'; step: number; belongs: number[] }
  /** Used once and taken off: a new one goes in, `by` where it has come already. */
  | { kind: 'not-again'; pieces: { piece: PieceId; by: PieceId | null }[] }
  | { kind: 'empty' }
  /** Nothing in it goes back: old, spare, or unknown. */
  | { kind: 'nothing-to-fit' }

/** What a scanned or typed code means. */
export type ScanAnswer =
  | {
      kind: 'container'
      container: number
      code: string
      pieces: ScannedPiece[]
      /** Containers that stand in it. */
      inside: number[]
      verdict: Verdict
    }
  /** A label that no container has yet. */
  | { kind: 'blank'; container: number; code: string }
  /** A label that is void, whether a container had it or not. */
  | { kind: 'void'; container: number; code: string; insteadOf: number | null; reason: string }
  /** A step on paper, such as on the printed plan. */
  | { kind: 'step'; step: number; code: string }
  /** The tag on the machine itself. */
  | { kind: 'machine'; code: string }
  | { kind: 'other-job'; job: number; container: number; name: string | null; bearer: Bearer }
  | { kind: 'unknown'; container: number; code: string | null }
  | { kind: 'misread'; digits: string; near: string[] }
  | { kind: 'not-a-code'; text: string }

export interface JobNumber {
  no: number
  name: string
}

/**
 * Answers a scanned or typed code: a whole label code, or within the job its number alone.
 * `others` are the other jobs known here, by number.
 */
export function scan(session: Session, text: string, others: readonly JobNumber[] = []): ScanAnswer {
  const { state } = session
  const reading = readCode(text)
  if (reading.kind === 'code') {
    if (reading.job === state.job.no) return answer(session, reading.container)
    const name = others.find(({ no }) => no === reading.job)?.name ?? null
    const { job, container } = reading
    return { kind: 'other-job', job, container, name, bearer: byNumber(container) }
  }
  if (reading.kind === 'misread') {
    return { kind: 'misread', digits: reading.digits, near: nearest(state, reading.digits) }
  }
  const number = /^\s*0*(\d{1,4})\s*$/.exec(text)?.[1]
  if (number && Number(number) > 0) return answer(session, Number(number))
  return { kind: 'not-a-code', text }
}

/** The label code of a container of this job, or of an unused label; with the numbers of `label/code.ts`, of a step. */
export function codeOf(state: State, container: number): string {
  return labelCode(state.job.no, container)
}

/** What a number in a label code of this job stands for. */
export type Bearer =
  | { kind: 'container' | 'blank'; container: number }
  | { kind: 'step'; step: number }
  | { kind: 'machine' }

/** What a number in a label code of this job stands for; null where it stands for nothing. */
export function bearerOf(state: State, number: number): Bearer | null {
  // A record from before steps had codes may have containers of any number.
  if (state.containers.has(number)) return { kind: 'container', container: number }
  if (state.blanks.has(number)) return { kind: 'blank', container: number }
  if (number === MACHINE_NUMBER) return { kind: 'machine' }
  const step = stepOf(number)
  return step !== null && state.steps.has(step) ? { kind: 'step', step } : null
}

/** What a number stands for in a job of which nothing else is known. */
function byNumber(number: number): Bearer {
  const step = stepOf(number)
  if (step !== null) return { kind: 'step', step }
  return number === MACHINE_NUMBER ? { kind: 'machine' } : { kind: 'container', container: number }
}

/** The codes that a misread may have been meant for: of containers and labels, or else of the machine and its steps. */
function nearest(state: State, digits: string): string[] {
  const labels = [...state.containers.keys(), ...state.blanks.keys()]
  const near = nearCodes(
    digits,
    labels.map((no) => codeOf(state, no)),
  )
  if (near.length > 0) return near
  const steps = [...state.steps.keys()].filter((no) => no <= MOST_STEPS).map(stepNumber)
  return nearCodes(
    digits,
    [MACHINE_NUMBER, ...steps].map((no) => codeOf(state, no)),
  )
}

/** A label code has no room for more. */
const MOST_STEPS = 999

function answer(session: Session, no: number): ScanAnswer {
  const { state } = session
  const code = codeOf(state, no)
  const bearer = bearerOf(state, no)
  if (bearer?.kind === 'machine') return { kind: 'machine', code }
  if (bearer?.kind === 'step') return { kind: 'step', step: bearer.step, code }
  const label = state.containers.get(no) ?? state.blanks.get(no)
  if (!label) {
    const dealt = no <= state.dealt.container
    return { kind: 'unknown', container: no, code: dealt ? code : null }
  }
  if (label.voided) {
    const { insteadOf, reason } = label.voided
    return { kind: 'void', container: no, code, insteadOf: insteadOf ?? null, reason }
  }
  if (bearer?.kind === 'blank') return { kind: 'blank', container: no, code }
  const inside = [...state.containers.values()]
    .filter((other) => other.inside === no && other.voided === null)
    .map((other) => other.no)
  const pieces = holdingsIn(state.ledger, no).flatMap((holding) => [
    scanned(state, holding),
    ...ridersOf(state.ledger, holding.piece).map(({ piece, on, count }) =>
      scanned(state, { piece, place: on, count }),
    ),
  ])
  return { kind: 'container', container: no, code, pieces, inside, verdict: verdict(session, pieces) }
}

function scanned(state: State, { piece, count, place }: Holding): ScannedPiece {
  const account = state.ledger.accounts.get(piece) as Account
  const wanted = !belongsInToolbox(account.piece) && owedAtHome(state, account) > 0 && !state.used.has(piece)
  return { piece, count, place, step: account.piece.step, wanted }
}

function verdict(session: Session, pieces: ScannedPiece[]): Verdict {
  if (pieces.length === 0) return { kind: 'empty' }
  const belongs = [...new Set(pieces.filter(({ wanted }) => wanted).map(({ step }) => step))]
  const inHand = session.state.build
  const step = inHand !== null && belongs.includes(inHand) ? inHand : belongs[0]
  if (step === undefined) return notAgain(session.state, pieces) ?? { kind: 'nothing-to-fit' }
  // On the last round all is closed: what opens the home of a found piece is what has to be known.
  if (
    inHand !== null &&
    step !== inHand &&
    !(isLastRound(session.state, inHand) && isDone(session.state, step))
  )
    return { kind: 'not-in-this-step', step: inHand, belongs }
  const held = notAccepted(session, pieces, step)
  if (held) return held
  if (step === inHand) return { kind: 'fits-now', step }
  // Of several steps, the one that could take it is the one to name.
  const open = belongs.find((candidate) => takesPieces(session, candidate))
  if (open !== undefined) return { kind: 'fits-now', step: open }
  return isDone(session.state, step)
    ? { kind: 'closed-over', step, undo: undoToReach(session.gates(), step) }
    : { kind: 'not-yet', step, reasons: session.gates().start(step) }
}

/** Used pieces must not look like any other old ones: put back, they would pass for new. */
function notAgain(state: State, pieces: readonly ScannedPiece[]): Verdict | null {
  const used = [...new Set(pieces.map(({ piece }) => piece))].filter((piece) => state.used.has(piece))
  if (used.length === 0) return null
  const after = [...state.ledger.accounts.values()]
  return {
    kind: 'not-again',
    pieces: used.map((piece) => ({
      piece,
      by: after.find(({ piece: { replaces } }) => replaces === piece)?.piece.id ?? null,
    })),
  }
}

/** What is condemned is said before anything else that keeps it from going home; then what nobody has checked. */
function notAccepted({ state }: Session, pieces: readonly ScannedPiece[], step: number): Verdict | null {
  const reasons = pieces
    .filter((piece) => piece.wanted && piece.step === step)
    .flatMap(({ piece }) => judgingReasons(state, piece))
  const bad = reasons.filter(({ code }) => code === 'piece-judged' || code === 'compare-wrong')
  if (bad.length > 0) return { kind: 'not-good', step, reasons: bad }
  return reasons.length > 0 ? { kind: 'not-checked', step, reasons } : null
}

/** A step once begun takes what there is; what keeps others from starting no longer concerns it. One that is done takes nothing. */
function takesPieces(session: Session, no: number): boolean {
  const isUnderway = session.state.steps.get(no)?.built === 'underway'
  return isUnderway || (!isDone(session.state, no) && session.gates().start(no).length === 0)
}

function isDone(state: State, no: number): boolean {
  return state.steps.get(no)?.built === 'done'
}
