import { inchesToMillimetres } from '../number.ts'
import type { Judged, Lacking, MeasuredResult, Worked } from './judged.ts'
import type { MeasuredLimits, Measurement } from './measurement.ts'
import { type Band, type Verdict, verdictOn } from './verdict.ts'
import { workOut } from './work-out.ts'

/**
 * What readings come to, each result held against the limit that is meant for it.
 *
 * How far a reading may be off: by half of what the instrument resolves, either way; of feelers, the true gap lies
 * between the leaf that enters and the next one, which does not. A result of two readings may be off by what both
 * may be. A result on the limit is within it. One for which the true value may lie on either side of a limit is too
 * close to call for that instrument, and the resolution that would decide is said. Without an instrument the
 * readings are compared as they are, and the resolution is asked for; without limits there is no verdict.
 */
export function judge(measurement: Measurement): Judged {
  const judged = judgeAsRead(measurement)
  const isSlip =
    judged.verdict === 'out' && isUnitless(measurement) && judgeAsRead(asInches(measurement)).verdict === 'in'
  return isSlip ? { ...judged, lacking: [...judged.lacking, { what: 'inches' }] } : judged
}

function judgeAsRead(measurement: Measurement): Judged {
  const { limits, instrument } = measurement
  const { worked, lacking: unread } = workOut(measurement)
  const resolutionMm = instrument?.resolutionMm ?? 0
  const results = worked.map((each) => held(each, bandFor(each, measurement.kind, limits), resolutionMm))
  const isLimited = results.some(({ verdict }) => verdict !== null)
  const lacking: Lacking[] = [
    ...unread,
    ...(isLimited || results.length === 0 ? [] : [{ what: 'limits' as const }]),
    ...(instrument ? [] : [{ what: 'resolution' as const }]),
  ]
  const worst = worstOf(results.map(({ verdict }) => verdict))
  // What was found out is out; but what was not looked at is not in.
  return { results, verdict: worst === 'in' && unread.length > 0 ? null : worst, lacking }
}

function held(worked: Worked, band: Band | undefined, resolutionMm: number): MeasuredResult {
  if (band?.leastMm === undefined && band?.mostMm === undefined) return { ...worked, verdict: null }
  return { ...worked, ...band, ...verdictOn(worked, band, resolutionMm) }
}

/** The limits that are meant for a result. */
function bandFor(
  { what }: Worked,
  kind: Measurement['kind'],
  limits: MeasuredLimits | undefined,
): Band | undefined {
  if (what === 'flatness-in-span') return { mostMm: limits?.mostInSpanMm }
  if (kind === 'size' && what === 'out-of-round') return { mostMm: limits?.outOfRoundMostMm }
  if (kind === 'size' && what === 'taper') return { mostMm: limits?.taperMostMm }
  return limits && { leastMm: limits.leastMm, mostMm: limits.mostMm }
}

function worstOf(verdicts: readonly (Verdict | null)[]): Verdict | null {
  const fromWorst: Verdict[] = ['out', 'too-close', 'in']
  return fromWorst.find((verdict) => verdicts.includes(verdict)) ?? null
}

function isUnitless({ readings }: Measurement): boolean {
  return readings.every(({ typed }) => /^[\d.,+-]+$/.test(typed))
}

function asInches(measurement: Measurement): Measurement {
  const readings = measurement.readings.map((each) => ({ ...each, mm: inchesToMillimetres(each.mm) }))
  return { ...measurement, readings }
}
