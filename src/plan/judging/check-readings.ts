import type { Account } from '../../ledger/account.ts'
import { accountOf } from '../../ledger/ledger.ts'
import { wordsOf } from '../../trade/bag-line/name-words.ts'
import { judge } from '../../trade/measuring/judge.ts'
import type { Judged } from '../../trade/measuring/judged.ts'
import type { MeasuredLimits } from '../../trade/measuring/measurement.ts'
import { readAskedMeasure } from '../../trade/measuring/reading/read-asked-measure.ts'
import { readSubject } from '../../trade/measuring/reading/read-subject.ts'
import type { Verdict } from '../../trade/measuring/verdict.ts'
import type { MeasureFacts, PlanFacts } from '../facts.ts'
import type { CheckFacts } from './judging-facts.ts'

/** One measurement of a piece, judged by the readings that are of this piece alone. */
export interface PieceReading {
  measure: MeasureFacts
  judged: Judged
}

export interface CheckReadings {
  /** What was measured of the piece since the check was asked; of the same name the last. */
  readings: PieceReading[]
  /** What the check asks for and nobody measured since. */
  missing: string[]
  /** The worst verdict; null where nothing was held against a limit. */
  verdict: Verdict | null
}

/** What was measured that answers a check. Empty readings for a check of another kind. */
export function readingsFor(facts: PlanFacts, check: CheckFacts): CheckReadings {
  const asked = check.what.map((what) => readAskedMeasure(what))
  const askedOf = (measure: MeasureFacts) => asked.filter(({ quantity }) => answers(measure, quantity))
  const all =
    check.kind === 'measure'
      ? readingsOf(facts, check.piece, (measure) => askedOf(measure).flatMap(({ limits }) => limits ?? []))
      : []
  const readings = all.filter(
    ({ measure }) =>
      Number(measure.id.slice(1)) > check.askedAfter && (asked.length === 0 || askedOf(measure).length > 0),
  )
  const missing = asked
    .map(({ quantity }) => quantity)
    .filter((quantity) => !readings.some(({ measure }) => answers(measure, quantity)))
  const isUnnamed = check.kind === 'measure' && check.what.length === 0 && readings.length === 0
  return { readings, missing: isUnnamed ? ['it'] : missing, verdict: worst(readings) }
}

/**
 * The measurements of a piece, oldest first: its own, and those of its set that name its position. `besides`: limits that
 * they are held against besides their own; the worst verdict counts.
 */
export function readingsOf(
  facts: PlanFacts,
  piece: CheckFacts['piece'],
  besides: (measure: MeasureFacts) => MeasuredLimits[] = () => [],
): PieceReading[] {
  const account = accountOf(facts.ledger, piece)
  const mates = [...facts.ledger.accounts.values()].filter((other) => isMate(account, other))
  const positions = new Set(mates.flatMap(({ home }) => lower(home.position) ?? []))
  const position = lower(account.home.position)
  const found = new Map<string, PieceReading>()
  for (const measure of facts.measures.values()) {
    if (!mates.some((mate) => mate.piece.id === measure.piece)) continue
    const { measurement, name } = measure
    const placed = measurement.readings.filter(({ at }) => positions.has(lower(at) ?? ''))
    const mine = placed.filter(({ at }) => lower(at) === position)
    const isWhole = placed.length === 0 && measure.piece === piece
    if (mine.length === 0 && !(isWhole && (positions.size <= 1 || names(name, account)))) continue
    const own = mine.length === 0 ? measurement : { ...measurement, readings: mine }
    const judged = strictest([judge(own), ...besides(measure).map((limits) => judge({ ...own, limits }))])
    const key = position === undefined ? name.toLowerCase() : quantityOf(name)
    found.delete(key)
    found.set(key, { measure, judged })
  }
  return [...found.values()]
}

/**
 * Whether a measurement is one of what is asked: of its kind, as `flatness` or `run-out`; of plain sizes and gaps, of which
 * a part has many, one that shares a word with it.
 */
function answers({ name, measurement: { kind } }: MeasureFacts, what: string): boolean {
  const asked = readSubject(`${what} of it`)
  if (!asked.understood) return true
  if (asked.value.kind === 'flatness' && kind === 'flatness-grid') return true
  if (asked.value.kind !== kind) return false
  const words = new Set(wordsOf(name, EMPTY_WORDS))
  return (
    (kind !== 'size' && kind !== 'clearance') || wordsOf(what, EMPTY_WORDS).some((word) => words.has(word))
  )
}

const EMPTY_WORDS = new Set(['of', 'the', 'in', 'its', 'at', 'on', 'for', 'and', 'between', 'when'])

/** A position measured again alone is the same clearance as when it was measured with its mates: `oil clearance`. */
function quantityOf(name: string): string {
  return name.toLowerCase().replace(/ (?:of|at|on|in) .*$/, '')
}

/** The same readings held against several limits: what is worst of them, the last where they are alike. */
function strictest(all: [Judged, ...Judged[]]): Judged {
  const rank = ({ verdict }: Judged) => (verdict === null ? FROM_WORST.length : FROM_WORST.indexOf(verdict))
  return all.reduce((worse, each) => (rank(each) <= rank(worse) ? each : worse))
}

const FROM_WORST: readonly Verdict[] = ['out', 'too-close', 'in']

function worst(readings: readonly PieceReading[]): Verdict | null {
  return FROM_WORST.find((verdict) => readings.some(({ judged }) => judged.verdict === verdict)) ?? null
}

function isMate({ piece, home }: Account, other: Account): boolean {
  if (other.piece.id === piece.id) return true
  const { set, step } = piece
  return (
    home.position !== undefined && set !== undefined && other.piece.set === set && other.piece.step === step
  )
}

function names(name: string, { piece, home }: Account): boolean {
  const words = name.toLowerCase().split(/[\s,/:]+/)
  const position = lower(home.position)?.split(/\s+/) ?? []
  return words.includes(piece.id) || position.every((word) => words.includes(word))
}

function lower(text: string | undefined): string | undefined {
  return text?.toLowerCase()
}
