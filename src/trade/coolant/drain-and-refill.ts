import { withoutNoise } from '../number.ts'

/** A coolant whose strength is to change. Strengths are percent of antifreeze by volume. */
export interface Strengthening {
  capacityLitres: number
  nowPercent: number
  wantedPercent: number
  /** What goes in: 100 concentrate, 50 premix, 0 water. */
  refillPercent: number
}

/** A coolant of which a known amount came out: the rest stays in the block. */
export interface Drained {
  capacityLitres: number
  drainedLitres: number
  nowPercent: number
}

/** How much comes out and goes in. */
export type DrainAndRefill =
  /** `isAll`: nothing of what is in there may stay. */
  { code: 'drain-and-refill'; litres: number; isAll: boolean } | { code: 'nothing-to-do' } | ImpossibleRefill

/** What goes in, from a source and water. */
export type Blend =
  /** `blendPercent`: the strength of both together. */
  | { code: 'blend'; sourceLitres: number; waterLitres: number; blendPercent: number }
  | TooLittleDrained
  | ImpossibleRefill

/** The strength of all of it, once it has mixed. */
export type StrengthAfter = { code: 'strength'; percent: number } | ImpossibleRefill

/** More has to come out before any refill from this source can bring the strength that is wanted. */
export interface TooLittleDrained {
  code: 'too-little-drained'
  /** Which way the strength was to go. */
  toward: 'stronger' | 'weaker'
  /** The strength that the whole comes to with the source, or with water, as it is. */
  reachablePercent: number
  /** How much must come out in all, to be replaced by the source, or by water, as it is. */
  neededLitres: number
}

export type ImpossibleRefill =
  | { code: 'percent'; which: 'now' | 'wanted' | 'refill'; percent: number }
  | { code: 'not-positive'; which: 'capacity' | 'drained'; litres: number }
  | { code: 'drained-over-capacity'; drainedLitres: number; capacityLitres: number }
  /** What goes in is weaker than what is wanted, or stronger, so that no amount of it brings that. */
  | { code: 'refill-too-weak' | 'refill-too-strong'; wantedPercent: number; refillPercent: number }

/**
 * How many litres to drain and to replace for a wanted strength: D = C (t - c) / (r - c), the balance
 * t C = c (C - D) + r D solved for D. Volumes add up: the small contraction of glycol in water is left out.
 */
export function drainAndRefill(coolant: Strengthening): DrainAndRefill {
  const { capacityLitres, nowPercent, wantedPercent, refillPercent } = coolant
  const wrong =
    wrongLitres('capacity', capacityLitres) ??
    wrongPercent('now', nowPercent) ??
    wrongPercent('wanted', wantedPercent) ??
    wrongPercent('refill', refillPercent)
  if (wrong) return wrong
  if (wantedPercent === nowPercent) return { code: 'nothing-to-do' }
  if (wantedPercent > nowPercent && refillPercent < wantedPercent) {
    return { code: 'refill-too-weak', wantedPercent, refillPercent }
  }
  if (wantedPercent < nowPercent && refillPercent > wantedPercent) {
    return { code: 'refill-too-strong', wantedPercent, refillPercent }
  }
  const litres = exchanged(coolant)
  return { code: 'drain-and-refill', litres, isAll: refillPercent === wantedPercent }
}

/**
 * What to put in for a wanted strength, from a source (concentrate, or a premix) and water, where a known amount came
 * out. With all of it out this is mixing from empty. What goes in must have the strength c + (t - c) C / X.
 */
export function blendForRefill(coolant: Drained & { wantedPercent: number; sourcePercent: number }): Blend {
  const { capacityLitres, drainedLitres, nowPercent, wantedPercent, sourcePercent } = coolant
  const wrong =
    wrongDrained(coolant) ?? wrongPercent('wanted', wantedPercent) ?? wrongPercent('refill', sourcePercent)
  if (wrong) return wrong
  const blendPercent = withoutNoise(
    nowPercent + ((wantedPercent - nowPercent) * capacityLitres) / drainedLitres,
  )
  if (blendPercent > sourcePercent) {
    if (sourcePercent < wantedPercent) {
      return { code: 'refill-too-weak', wantedPercent, refillPercent: sourcePercent }
    }
    return tooLittle(coolant, 'stronger', sourcePercent)
  }
  if (blendPercent < 0) return tooLittle(coolant, 'weaker', 0)
  const sourceLitres = blendPercent === 0 ? 0 : withoutNoise((drainedLitres * blendPercent) / sourcePercent)
  return {
    code: 'blend',
    sourceLitres,
    waterLitres: withoutNoise(Math.max(0, drainedLitres - sourceLitres)),
    blendPercent,
  }
}

/** The strength after a known amount came out and as much of something else went in: c + (r - c) X / C. */
export function strengthAfterRefill(coolant: Drained & { refillPercent: number }): StrengthAfter {
  const wrong = wrongDrained(coolant) ?? wrongPercent('refill', coolant.refillPercent)
  return wrong ?? { code: 'strength', percent: mixed(coolant) }
}

/** D = C (t - c) / (r - c), where t lies between c and r. */
function exchanged({ capacityLitres, nowPercent, wantedPercent, refillPercent }: Strengthening): number {
  return withoutNoise((capacityLitres * (wantedPercent - nowPercent)) / (refillPercent - nowPercent))
}

function mixed({
  capacityLitres,
  drainedLitres,
  nowPercent,
  refillPercent,
}: Drained & { refillPercent: number }): number {
  return withoutNoise(nowPercent + ((refillPercent - nowPercent) * drainedLitres) / capacityLitres)
}

function tooLittle(
  coolant: Drained & { wantedPercent: number },
  toward: 'stronger' | 'weaker',
  refillPercent: number,
): TooLittleDrained {
  return {
    code: 'too-little-drained',
    toward,
    reachablePercent: mixed({ ...coolant, refillPercent }),
    neededLitres: exchanged({ ...coolant, refillPercent }),
  }
}

function wrongDrained(coolant: Drained): ImpossibleRefill | null {
  const { capacityLitres, drainedLitres, nowPercent } = coolant
  const wrong =
    wrongLitres('capacity', capacityLitres) ??
    wrongLitres('drained', drainedLitres) ??
    wrongPercent('now', nowPercent)
  if (wrong) return wrong
  return drainedLitres > capacityLitres
    ? { code: 'drained-over-capacity', drainedLitres, capacityLitres }
    : null
}

function wrongPercent(which: 'now' | 'wanted' | 'refill', percent: number): ImpossibleRefill | null {
  return percent >= 0 && percent <= 100 ? null : { code: 'percent', which, percent }
}

function wrongLitres(which: 'capacity' | 'drained', litres: number): ImpossibleRefill | null {
  return litres > 0 && Number.isFinite(litres) ? null : { code: 'not-positive', which, litres }
}
