import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import { type CheckReadings, readingsFor } from '../plan/judging/check-readings.ts'
import { checksByPiece, type Standing, standingOf } from '../plan/judging/judging.ts'
import type { CheckFacts, ComparisonFacts, VerdictFacts } from '../plan/judging/judging-facts.ts'

/** What was asked of one piece and decided about it. */
export interface JudgedPiece {
  piece: PieceId
  standing: Standing
  checks: CheckView[]
  verdict: VerdictFacts | null
  comparison: ComparisonFacts | null
}

export interface CheckView {
  check: CheckFacts
  /** Of an open check that measures: what was measured since it was asked. */
  readings: CheckReadings | null
}

/** Every piece that belongs on the machine and of which something was asked, decided or compared; what waits comes first. */
export function judgedPieces(state: State): JudgedPiece[] {
  const byPiece = checksByPiece(state)
  const pieces = new Set([...byPiece.keys(), ...state.verdicts.keys(), ...state.comparisons.keys()])
  const all = [...pieces]
    .filter((piece) => (state.ledger.accounts.get(piece)?.should ?? 0) > 0)
    .map((piece) => judgedPiece(state, piece, byPiece.get(piece) ?? []))
  return [
    ...all.filter(({ standing }) => !isSettled(standing)),
    ...all.filter(({ standing }) => isSettled(standing)),
  ]
}

/** One piece, whether or not anything was asked of it. */
export function judgedPieceOf(state: State, piece: PieceId): JudgedPiece {
  return judgedPiece(
    state,
    piece,
    [...state.checks.values()].filter((check) => check.piece === piece),
  )
}

function judgedPiece(state: State, piece: PieceId, checks: readonly CheckFacts[]): JudgedPiece {
  return {
    piece,
    standing: standingOf(state, piece, checks),
    checks: checks.map((check) => ({
      check,
      readings: check.done === null && check.kind === 'measure' ? readingsFor(state, check) : null,
    })),
    verdict: state.verdicts.get(piece) ?? null,
    comparison: state.comparisons.get(piece) ?? null,
  }
}

function isSettled(standing: Standing): boolean {
  return standing === 'accepted' || standing === 'not-asked' || standing === 'gone'
}
