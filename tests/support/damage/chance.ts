/** A seeded source of chance: the same seed, the same damage, on every machine. */
export interface Chance {
  /** From `low` up to, but not including, `high`. */
  between(low: number, high: number): number
  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number
  /** Normally distributed, mean 0 and standard deviation 1. */
  normal(): number
}

export function chanceOf(seed: number): Chance {
  const next = mulberry32(seed)
  const between = (low: number, high: number) => low + (high - low) * next()
  return {
    between,
    whole: (low, high) => Math.floor(between(low, high + 1)),
    // Box and Muller; 1 - next() is never 0.
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  }
}

/** The generator of that name, public domain: 32 bits of state, good enough to scatter oil. */
function mulberry32(seed: number): () => number {
  // Neighbouring seeds are far apart after a multiplication by an odd constant.
  let state = Math.imul(seed + 1, 0x9e3779b1) >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}
