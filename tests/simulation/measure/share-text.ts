import { confidenceLimits } from './interval.ts'

/** A count as it is written: 10,413. */
export function countText(count: number): string {
  return count.toLocaleString('en-US')
}

/** Rounded down: what is not all of it never reads as 100 %. */
export function percentDown(share: number): string {
  return percent(Math.floor(share * STEPS + TINY))
}

/** Rounded up: what is not nothing never reads as 0 %. */
export function percentUp(share: number): string {
  return percent(Math.ceil(share * STEPS - TINY))
}

/** A share with its limits of 95 % confidence, these rounded outwards: `99.97 % (99.91 % to 100 %)`. The share never reads as all or none where it is not. */
export function shareText(hits: number, tries: number): string {
  if (tries === 0) return 'none made'
  const { low, high } = confidenceLimits(hits, tries)
  const share = percentDown(hits / tries)
  const isTrace = hits > 0 && share === percentDown(0)
  return `${isTrace ? `under ${percent(1)}` : share} (${percentDown(low)} to ${percentUp(high)})`
}

/** In a whole: hundredths of a per cent. */
const STEPS = 10_000
/** So that what is a whole number of steps stays so, though a fraction may lie a trace beside it. */
const TINY = 1e-9

function percent(steps: number): string {
  return `${steps / 100} %`
}
