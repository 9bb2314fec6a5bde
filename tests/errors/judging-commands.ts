import type { Command } from '../../src/journal/command.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import type { CheckId, CheckKind, TriggerItem, VerdictKind } from '../../src/plan/judging/judging-facts.ts'
import type { Measurement } from '../../src/trade/measuring/measurement.ts'

// Short forms of what is asked of pieces and decided about them.

export function asked(piece: PieceId, kind: CheckKind = 'look', ...what: string[]): Command {
  return { do: 'ask-checks', checks: [{ piece, kind, what }] }
}

export function passed(checks: CheckId[], says?: string): Command {
  return { do: 'pass-checks', checks, says }
}

export function judged(verdict: VerdictKind, reason: string, ...pieces: PieceId[]): Command {
  return { do: 'judge', pieces, verdict, reason }
}

/** So many of a lot. */
export function judgedSome(count: number, verdict: VerdictKind, piece: PieceId): Command {
  return { do: 'judge', pieces: [piece], count, verdict, reason: 'bent' }
}

export function together(reason: string | undefined, ...pieces: PieceId[]): Command {
  return { do: 'bind', pieces, reason }
}

export function listed(when: string, ...items: TriggerItem[]): Command {
  return { do: 'set-trigger', when, items }
}

export function found(text: string, ...triggers: `h${number}`[]): Command {
  return { do: 'find', text, triggers }
}

/** Gaps under a straight-edge, with a leaf of 0.01 mm and a limit of 0.05 mm. Invented values. */
export function flatness(piece: PieceId, ...gaps: number[]): Command {
  const measurement: Measurement = {
    kind: 'flatness',
    readings: gaps.map((mm) => ({ mm, typed: `${mm}` })),
    instrument: { resolutionMm: 0.01, typed: '0.01 feeler', kind: 'feeler' },
    limits: { typed: 'max 0.05', mostMm: 0.05 },
  }
  return { do: 'measure', name: `flatness of ${piece}`, piece, measurement }
}

/** Clearances of a set at its positions, with a limit of 0.07 mm. Invented values. */
export function clearances(piece: PieceId, gaps: Record<string, number>): Command {
  const measurement: Measurement = {
    kind: 'clearance',
    readings: Object.entries(gaps).map(([at, mm]) => ({ mm, typed: `${mm}`, at })),
    instrument: { resolutionMm: 0.01, typed: 'by 0.01' },
    limits: { typed: 'max 0.07', mostMm: 0.07 },
  }
  return {
    do: 'measure',
    name: `oil clearance of cam caps ${Object.keys(gaps).join(',')}`,
    piece,
    measurement,
  }
}
