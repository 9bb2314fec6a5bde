/** What becomes of an Enter: it counts, it is a repeat and does not, or it waits to see whether repeats follow. */
export type Fate = 'counts' | 'repeat' | 'waits'

/**
 * Faster than that, in milliseconds, no finger presses twice on purpose: a key that bounces, one that is held down
 * (keyboards repeat it every 25 to 92 ms), or a scanner that ends a code with two.
 */
export const REPEAT_MS = 120
/** A key held down begins to repeat within that time of its press, in milliseconds. */
const HELD_MS = 1000

/**
 * Enter on the empty line is a claim: this bolt is turned. Terminals tell no key held down from one pressed again, so
 * only time is left to tell them by, and it only ever withholds: what is typed or scanned is taken at any speed.
 */
export function enterGuard(): (at: number, isClaim: boolean) => Fate {
  let last = Number.NEGATIVE_INFINITY
  return (at, isClaim) => {
    const since = at - last
    last = at
    if (!isClaim || since > HELD_MS) return 'counts'
    return since < REPEAT_MS ? 'repeat' : 'waits'
  }
}
