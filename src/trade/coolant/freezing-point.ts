/** The two antifreezes of the trade. Ethylene glycol is poisonous. */
export type Glycol = 'ethylene' | 'propylene'

/** Where a mixture of glycol and water begins to freeze. Indicative: the table of the coolant's maker decides. */
export type FreezingPoint =
  | { code: 'freezes'; celsius: number }
  /** Between nothing and what the fit begins with: no colder than this. */
  | { code: 'weaker-than-range'; noColderThan: number }
  /** More glycol protects no further; that of ethylene glycol freezes sooner again. `bestCelsius` is reached at 60 %. */
  | { code: 'stronger-than-range'; bestCelsius: number }
  /** More than a coolant may have. */
  | { code: 'too-strong' }
  | { code: 'percent' }

/** How strong a mixture must be. Indicative, as above. */
export type StrengthFor =
  | { code: 'strength'; percent: number }
  /** Water does it, as far as frost goes. */
  | { code: 'no-frost' }
  /** The weakest mixture of the fit freezes at `celsius`, which is colder than what is asked for. */
  | { code: 'warmer-than-range'; celsius: number }
  /** The best mixture freezes at `celsius`, which is not cold enough. */
  | { code: 'colder-than-range'; celsius: number }

/** Percent of glycol by volume between which the fit holds. */
const leastPercent = 10
const mostPercent = 60
/** ASTM D3306 lets a coolant have no more. */
const mostUsedPercent = 70

/**
 * ln(T / 1 K) as a polynomial of the volume fraction less 0.35: the fit of the open library CoolProp (fluids AEG and
 * APG) to the tables of secondary coolants in the ASHRAE Handbook, Fundamentals, 2001. It holds from 10 to 60 %.
 */
const fits: Readonly<Record<Glycol, readonly number[]>> = {
  ethylene: [5.534468, -0.3574293, -0.6535113, -0.9039166, 1.048048, 4.622116],
  propylene: [5.546103, -0.326277, -0.6666873, -0.8800598, -1.071417, -1.875782],
}
const middle = 0.35
const zeroCelsius = 273.15 // K

/** The freezing point of a mixture of glycol and water, in °C, with the range in which it is known. */
export function freezingPoint(glycol: Glycol, percent: number): FreezingPoint {
  if (!(percent >= 0 && percent <= 100)) return { code: 'percent' }
  if (percent === 0) return { code: 'freezes', celsius: 0 }
  if (percent < leastPercent) return { code: 'weaker-than-range', noColderThan: fitted(glycol, leastPercent) }
  if (percent <= mostPercent) return { code: 'freezes', celsius: fitted(glycol, percent) }
  if (percent <= mostUsedPercent) {
    return { code: 'stronger-than-range', bestCelsius: fitted(glycol, mostPercent) }
  }
  return { code: 'too-strong' }
}

/** The least percent of glycol that freezes no sooner than at a temperature in °C; found by halving, for the fit falls steadily. */
export function strengthFor(glycol: Glycol, celsius: number): StrengthFor {
  if (celsius >= 0) return { code: 'no-frost' }
  const warmest = fitted(glycol, leastPercent)
  if (celsius > warmest) return { code: 'warmer-than-range', celsius: warmest }
  const coldest = fitted(glycol, mostPercent)
  if (!(celsius >= coldest)) return { code: 'colder-than-range', celsius: coldest }
  let weak = leastPercent
  let strong = mostPercent
  while (strong - weak > 1e-9) {
    const half = (weak + strong) / 2
    if (fitted(glycol, half) > celsius) weak = half
    else strong = half
  }
  return { code: 'strength', percent: strong }
}

function fitted(glycol: Glycol, percent: number): number {
  const x = percent / 100 - middle
  const logarithm = fits[glycol].reduceRight((sum, coefficient) => sum * x + coefficient, 0)
  return Math.exp(logarithm) - zeroCelsius
}
