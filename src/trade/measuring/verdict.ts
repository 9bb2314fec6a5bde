import { type Bounded, exact } from './bounds.ts'

/** Within the limits, outside them, or so near to one that the instrument cannot tell. */
export type Verdict = 'in' | 'out' | 'too-close'

/** Lower and upper limit; mm. */
export interface Band {
  leastMm?: number | undefined
  mostMm?: number | undefined
}

export interface Verdicted {
  verdict: Verdict
  /** Of a value too close to call: the limit it is too close to, mm. */
  nearMm?: number
  /** Steps of this size or finer would decide, mm; absent where the value is on the limit itself. */
  decidesMm?: number
}

/**
 * The verdict on a value. A value on the limit is within it. Where the true value may lie on either side of a
 * limit, the instrument cannot tell: that is so from the limit less what the reading may be off up to the limit and
 * as much again; at those ends themselves it is told.
 */
export function verdictOn(value: Bounded, { leastMm, mostMm }: Band, resolutionMm: number): Verdicted {
  const sides = [
    ...(mostMm === undefined ? [] : [{ limitMm: mostMm, ...beside(mostMm, value) }]),
    // A lower limit is an upper one, seen in a mirror.
    ...(leastMm === undefined ? [] : [{ limitMm: leastMm, ...beside(-leastMm, mirrored(value)) }]),
  ]
  if (sides.some(({ verdict }) => verdict === 'out')) return { verdict: 'out' }
  const unclear = sides.filter(({ verdict }) => verdict === 'too-close')
  const [first] = unclear
  if (!first) return { verdict: 'in' }
  const share = Math.min(...unclear.map((each) => each.share))
  // Rounded down, for a coarser one would not decide.
  const decidesMm = Math.floor(share * resolutionMm * 1e6 + 1e-3) / 1e6
  return { verdict: 'too-close', nearMm: first.limitMm, ...(decidesMm > 0 && { decidesMm }) }
}

/** On which side of an upper limit a value is, and what share of its doubt it might have for that to be told. */
function beside(limitMm: number, { mm, lowMm, highMm }: Bounded): { verdict: Verdict; share: number } {
  const [limit, low, value, high] = [exact(limitMm), exact(lowMm), exact(mm), exact(highMm)]
  if (high <= limit) return { verdict: 'in', share: 1 }
  if (low > limit || (low === limit && low < value)) return { verdict: 'out', share: 1 }
  const doubt = value > limit ? value - low : high - value
  return { verdict: 'too-close', share: Math.abs(value - limit) / doubt }
}

function mirrored({ mm, lowMm, highMm }: Bounded): Bounded {
  return { mm: -mm, lowMm: -highMm, highMm: -lowMm }
}
