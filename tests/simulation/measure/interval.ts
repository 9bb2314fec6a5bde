import { incompleteBeta } from './incomplete-beta.ts'

/** Between these two a share lies, each from 0 to 1. */
export interface Limits {
  low: number
  high: number
}

/** How often the limits may be wrong: they are those of 95 %. */
const RISK = 0.05

/**
 * The limits of 95 % confidence for a share of which `hits` of `tries` were seen, by Clopper and Pearson (Biometrika 26, 1934,
 * 404-413): half of the risk on each side, at 0 and at all of them too, where the other limit is then 1 - 0.025^(1/n) and
 * 0.025^(1/n). To put the whole risk on one side there makes narrower limits, which are wrong more often than said.
 * Where nothing was tried nothing is known: 0 to 1.
 */
export function confidenceLimits(hits: number, tries: number): Limits {
  expectCounts(hits, tries)
  return { low: lowLimit(hits, tries, RISK / 2), high: highLimit(hits, tries, RISK / 2) }
}

/**
 * With 95 % confidence the share is no more than this: the whole risk on the one side that is asked about. Of none seen it is
 * 1 - 0.05^(1/n), nearly 3 / n, the "rule of three".
 */
export function atMost(hits: number, tries: number): number {
  expectCounts(hits, tries)
  return highLimit(hits, tries, RISK)
}

/** With 95 % confidence the share is no less than this: the whole risk on that one side. */
export function atLeast(hits: number, tries: number): number {
  expectCounts(hits, tries)
  return lowLimit(hits, tries, RISK)
}

function expectCounts(hits: number, tries: number): void {
  if (![hits, tries].every(Number.isSafeInteger) || hits < 0 || hits > tries)
    throw new Error(`${hits} of ${tries} is no share`)
}

/** The share at which so many hits or more come as seldom as the risk says. */
function lowLimit(hits: number, tries: number, risk: number): number {
  if (hits === 0) return 0
  return whereRising((share) => incompleteBeta(share, hits, tries - hits + 1) >= risk)
}

/** The share at which so few hits or fewer come as seldom as the risk says. */
function highLimit(hits: number, tries: number, risk: number): number {
  if (hits === tries) return 1
  // Of the chance of the opposite, for a small chance keeps its figures where one near 1 loses them.
  return whereRising((share) => incompleteBeta(1 - share, tries - hits, hits + 1) < risk)
}

/** From where on between 0 and 1 something holds, halved until no number lies between. */
function whereRising(holds: (share: number) => boolean): number {
  let below = 0
  let above = 1
  for (;;) {
    const middle = (below + above) / 2
    if (middle === below || middle === above) return above
    if (holds(middle)) above = middle
    else below = middle
  }
}
