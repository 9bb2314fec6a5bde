/**
 * The regularised incomplete beta function I_x(a, b), for 0 <= x <= 1 and a, b > 0: NIST Digital Library of Mathematical
 * Functions (DLMF) 8.17.2, by the continued fraction 8.17.22. For whole a and b it is the chance of a or more
 * hits in a + b - 1 tries of x each (DLMF 8.17.5). Good to about nine figures where a + b is a million.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (!(x >= 0 && x <= 1 && a > 0 && b > 0)) throw new Error(`no incomplete beta of ${x}, ${a}, ${b}`)
  if (x === 0 || x === 1) return x
  // The fraction runs fast on this side of the middle only; the other side is what is left of 1 (DLMF 8.17.4).
  return x <= (a + 1) / (a + b + 2) ? belowMiddle(x, a, b) : 1 - belowMiddle(1 - x, b, a)
}

function belowMiddle(x: number, a: number, b: number): number {
  const front = Math.exp(
    a * Math.log(x) + b * Math.log1p(-x) + logGamma(a + b) - logGamma(a + 1) - logGamma(b),
  )
  return front / fraction(x, a, b)
}

/** More steps than the fraction needs for a + b of a thousand million. */
const MOST_STEPS = 100_000
const NEAR_NOTHING = 1e-300

/** 1 + d1/(1 + d2/(1 + ...)) of DLMF 8.17.22, taken from the front by the modified Lentz algorithm (DLMF 3.10.2). */
function fraction(x: number, a: number, b: number): number {
  let value = 1
  let c = 1
  let d = 0
  for (let step = 1; step <= MOST_STEPS; step += 1) {
    const part = coefficient(step, x, a, b)
    d = 1 / (1 + part * d || NEAR_NOTHING)
    c = 1 + part / c || NEAR_NOTHING
    value *= c * d
    if (Math.abs(c * d - 1) < 1e-15) return value
  }
  throw new Error(`the fraction of ${x}, ${a}, ${b} does not settle`)
}

function coefficient(step: number, x: number, a: number, b: number): number {
  const m = Math.floor(step / 2)
  return step % 2 === 0
    ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
}

/** From here on the series below has all the figures that a number holds. */
const LARGE = 12

/** The natural logarithm of the gamma function of a number above 0: Stirling's series, DLMF 5.11.1, reached by the recurrence 5.5.1. */
export function logGamma(x: number): number {
  let shift = 0
  let z = x
  for (; z < LARGE; z += 1) shift += Math.log(z)
  const inverse = 1 / (z * z)
  let series = 0
  for (const term of STIRLING) series = series * inverse + term
  return (z - 0.5) * Math.log(z) - z + Math.log(2 * Math.PI) / 2 + series / z - shift
}

/** B(2k) / (2k (2k - 1)) for k = 7 to 1, with the Bernoulli numbers of DLMF 24.2. */
const STIRLING = [1 / 156, -691 / 360_360, 1 / 1188, -1 / 1680, 1 / 1260, -1 / 360, 1 / 12]
