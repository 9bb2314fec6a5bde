import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import { Gates } from '../plan/gates.ts'
import { readingsFor } from '../plan/judging/check-readings.ts'
import { boundTo } from '../plan/judging/judging.ts'
import type { CheckId, FindingFacts, TriggerId } from '../plan/judging/judging-facts.ts'
import { undoToReach } from '../plan/leftovers.ts'
import type { Verdict } from '../trade/measuring/verdict.ts'
import type { Entry } from './stored-entry.ts'

export type JudgingHeed =
  /** These were judged along, because they belong together with the piece. */
  | { heed: 'judged-along'; piece: PieceId; along: PieceId[]; reasons: string[] }
  /** What was condemned is on the machine: the steps to undo, last built first. */
  | { heed: 'judged-on'; piece: PieceId; undo: number[] }
  /** A measurement is one that checks ask for, alike in what it comes to; what is still missing for them. */
  | { heed: 'check-measured'; checks: CheckId[]; verdict: Verdict | null; missing: string[] }
  /** What a finding opened; no lists where none is for it. */
  | { heed: 'found'; text: string; opened: TriggerId[] }
  /** A new piece takes a home that belongs together with others: those are to be judged as well. */
  | { heed: 'mates'; piece: PieceId; mates: PieceId[]; reasons: string[] }

/** What is worth a look after something was judged, measured, found or replaced. */
export function judgingHeeds(state: State, entry: Entry): JudgingHeed[] {
  switch (entry.type) {
    case 'judged':
      return entry.verdict === 'replace' || entry.verdict === 'machine'
        ? condemned(state, [...entry.of, ...entry.along], entry)
        : []
    case 'found-out':
      return [found(entry.finding), ...condemned(state, entry.condemned, null)]
    case 'measured':
      return measured(state, entry.measure.id)
    case 'supplied':
      return entry.pieces.flatMap(({ id }) => mates(state, id))
    default:
      return []
  }
}

function condemned(
  state: State,
  pieces: readonly PieceId[],
  entry: { of: PieceId[]; along: PieceId[] } | null,
): JudgingHeed[] {
  const [piece] = entry?.of ?? []
  const along: JudgingHeed[] =
    piece !== undefined && entry && entry.along.length > 0
      ? [{ heed: 'judged-along', piece, along: entry.along, reasons: bondReasons(state, entry.along) }]
      : []
  const on = pieces.filter((id) => state.ledger.accounts.get(id)?.at.has('machine'))
  if (on.length === 0) return along
  const gates = new Gates(state)
  const byStep = new Map(on.map((id) => [state.ledger.accounts.get(id)?.piece.step ?? 0, id]))
  return [
    ...along,
    ...[...byStep].map(([step, id]) => ({
      heed: 'judged-on' as const,
      piece: id,
      undo: undoToReach(gates, step),
    })),
  ]
}

function found({ text, triggers }: FindingFacts): JudgingHeed {
  return { heed: 'found', text, opened: triggers }
}

function measured(state: State, measure: `q${number}`): JudgingHeed[] {
  const alike = new Map<string, Extract<JudgingHeed, { heed: 'check-measured' }>>()
  for (const check of state.checks.values()) {
    if (check.done !== null || check.kind !== 'measure') continue
    const { readings, missing, verdict } = readingsFor(state, check)
    if (!readings.some((each) => each.measure.id === measure)) continue
    const key = JSON.stringify([check.what, missing, verdict])
    const known = alike.get(key) ?? { heed: 'check-measured', checks: [], verdict, missing }
    known.checks.push(check.id)
    alike.set(key, known)
  }
  return [...alike.values()]
}

function mates(state: State, piece: PieceId): JudgingHeed[] {
  const others = boundTo(state, piece).filter((id) => {
    const account = state.ledger.accounts.get(id)
    const isCondemned = state.verdicts.get(id)?.verdict === 'replace'
    return account !== undefined && account.should > 0 && account.piece.replaces === undefined && !isCondemned
  })
  return others.length === 0
    ? []
    : [{ heed: 'mates', piece, mates: others, reasons: bondReasons(state, [piece]) }]
}

function bondReasons({ bonds }: State, pieces: readonly PieceId[]): string[] {
  const reasons = bonds
    .filter((bond) => bond.pieces.some((id) => pieces.includes(id)))
    .flatMap(({ reason }) => reason ?? [])
  return [...new Set(reasons)]
}
