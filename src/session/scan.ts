import type { State } from '../journal/state.ts'
import { labelCode, nearCodes, readCode } from '../label/code.ts'
import type { Account } from '../ledger/account.ts'
import { type Holding, holdingsIn } from '../ledger/ledger.ts'
import { belongsInToolbox, type PieceId } from '../ledger/piece.ts'
import { owedAtHome } from '../plan/contents.ts'
import type { Reason } from '../plan/reasons.ts'
import type { Session } from './session.ts'

/** What a piece in a scanned container is for, and whether it could go home now. */
export interface ScannedPiece {
  piece: PieceId
  count: number
  place: Holding['place']
  step: number
  /** Whether its home still wants it. */
  wanted: boolean
}

export type Verdict =
  | { kind: 'fits-now'; step: number }
  | { kind: 'not-yet'; step: number; reasons: Reason[] }
  /** It belongs to other steps than the one in hand. */
  | { kind: 'not-in-this-step'; step: number; belongs: number[] }
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
  | { kind: 'void'; container: number; code: string; insteadOf: number | null; reason: string }
  | { kind: 'other-job'; job: number; container: number; name: string | null }
  | { kind: 'unknown'; container: number; code: string | null }
  | { kind: 'misread'; digits: string; near: string[] }
  | { kind: 'not-a-code'; text: string }

export interface JobNumber {
  no: number
  name: string
}

/**
 * Answers a scanned or typed code: a whole label code, or within the job the container's number alone.
 * `others` are the other jobs known here, by number.
 */
export function scan(session: Session, text: string, others: readonly JobNumber[] = []): ScanAnswer {
  const { state } = session
  const reading = readCode(text)
  if (reading.kind === 'code') {
    if (reading.job === state.job.no) return answer(session, reading.container)
    const name = others.find(({ no }) => no === reading.job)?.name ?? null
    return { kind: 'other-job', job: reading.job, container: reading.container, name }
  }
  if (reading.kind === 'misread') {
    return { kind: 'misread', digits: reading.digits, near: nearCodes(reading.digits, codesOf(state)) }
  }
  const number = /^\s*0*(\d{1,4})\s*$/.exec(text)?.[1]
  if (number && Number(number) > 0) return answer(session, Number(number))
  return { kind: 'not-a-code', text }
}

/** The label code of a container of this job. */
export function codeOf(state: State, container: number): string {
  return labelCode(state.job.no, container)
}

/** The label codes of every container of this job. */
function codesOf(state: State): string[] {
  return [...state.containers.keys()].map((no) => codeOf(state, no))
}

function answer(session: Session, no: number): ScanAnswer {
  const { state } = session
  const container = state.containers.get(no)
  if (!container) {
    const dealt = no <= state.dealt.container
    return { kind: 'unknown', container: no, code: dealt ? labelCode(state.job.no, no) : null }
  }
  const code = codeOf(state, no)
  if (container.voided) {
    const { insteadOf, reason } = container.voided
    return { kind: 'void', container: no, code, insteadOf: insteadOf ?? null, reason }
  }
  const inside = [...state.containers.values()]
    .filter((other) => other.inside === no && other.voided === null)
    .map((other) => other.no)
  const pieces = holdingsIn(state.ledger, no).map((holding) => scanned(state, holding))
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
  if (step === undefined) return { kind: 'nothing-to-fit' }
  if (inHand !== null && step !== inHand) return { kind: 'not-in-this-step', step: inHand, belongs }
  if (step === inHand) return { kind: 'fits-now', step }
  // Of several steps, the one that could take it is the one to name.
  const open = belongs.find((candidate) => takesPieces(session, candidate))
  if (open !== undefined) return { kind: 'fits-now', step: open }
  return { kind: 'not-yet', step, reasons: session.gates().start(step) }
}

/** A step once begun takes what there is; what keeps others from starting no longer concerns it. */
function takesPieces(session: Session, no: number): boolean {
  return session.state.steps.get(no)?.built === 'underway' || session.gates().start(no).length === 0
}
