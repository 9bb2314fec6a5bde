/** A wrench with an adapter (an extension bar across the drive, a crow-foot) between its drive and the fastener. */
export interface Adapter {
  /** From the middle of the grip, where the hand pulls, to the drive of the wrench. */
  handleMm: number
  /** From the drive of the wrench to the fastener; 0 for a socket extension along the drive axis. */
  adapterMm: number
  /** Between the adapter and the wrench: 0 in line and lengthening it, 90 square to it, 180 pointing back. */
  angleDegrees: number
}

/**
 * What a wrench must be set to, or why there is no such setting: a handle without length, an adapter of less than none,
 * or a fastener that comes to lie under the hand or behind it.
 */
export type WrenchSetting =
  | { isPossible: true; settingNm: number; leverMm: number }
  | { isPossible: false; code: 'handle-length' | 'adapter-length' | 'no-lever' }

/** What the scale of a wrench spans. */
export interface WrenchRange {
  leastNm: number
  mostNm: number
}

/** What speaks against a wrench for a setting. */
export type WrenchRangeFault = 'range-empty' | 'below-range' | 'above-range' | 'lowest-fifth'

// Common practice: a fifth of the largest torque, the lowest point at which ISO 6789 has a wrench tested (from memory).
const leastShare = 0.2

/**
 * The setting for an adapter: S = T L/(L + E cos a), from the levers about the fastener; handbooks print it for an
 * adapter in line. `leverMm` is L + E cos a.
 */
export function settingFor(newtonMetres: number, adapter: Adapter): WrenchSetting {
  const { handleMm, adapterMm, angleDegrees } = adapter
  if (!(handleMm > 0)) return { isPossible: false, code: 'handle-length' }
  if (!(adapterMm >= 0)) return { isPossible: false, code: 'adapter-length' }
  const leverMm = handleMm + adapterMm * cosine(angleDegrees)
  if (!(leverMm > 0)) return { isPossible: false, code: 'no-lever' }
  return { isPossible: true, settingNm: (newtonMetres * handleMm) / leverMm, leverMm }
}

/**
 * What speaks against setting a wrench of this range to a torque; null where nothing does. The lowest fifth is that of
 * the largest torque: below it a scale is too coarse, and nobody tested it.
 */
export function wrenchRangeFault(
  settingNm: number,
  { leastNm, mostNm }: WrenchRange,
): WrenchRangeFault | null {
  if (!(leastNm >= 0 && mostNm > leastNm)) return 'range-empty'
  // A setting worked out to the limit is at the limit, not beyond it.
  const noise = 1e-9 * mostNm
  if (settingNm > mostNm + noise) return 'above-range'
  if (settingNm < leastNm - noise) return 'below-range'
  return settingNm < leastShare * mostNm - noise ? 'lowest-fifth' : null
}

/** The lowest setting that is of use on a wrench: its least, or a fifth of its most. */
export function leastUsableNm({ leastNm, mostNm }: WrenchRange): number {
  return Math.max(leastNm, leastShare * mostNm)
}

/** Exactly 0 at 90 degrees, where an adapter changes nothing. */
function cosine(degrees: number): number {
  const value = Math.cos((degrees * Math.PI) / 180)
  return Math.abs(value) < 1e-12 ? 0 : value
}
