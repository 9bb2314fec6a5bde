/** A share as a fraction of whole numbers, so that nothing is rounded. */
interface Fraction {
  over: bigint
  under: bigint
}

/** A number from 0 to 1 as the fraction that it is: every such number is so many times a power of a half. */
export function asFraction(value: number): Fraction {
  let over = value
  let under = 1n
  for (; !Number.isInteger(over); over *= 2) under *= 2n
  return { over: BigInt(over), under }
}

/** The chance of `first` to `last` hits in so many tries of that share each: the exact sum of the binomial distribution. */
export function chanceOf(
  [first, last]: readonly [number, number],
  tries: number,
  { over, under }: Fraction,
): number {
  const all = Array.from({ length: tries + 1 }, (_, hits) => hits)
  const isWithin = (hits: number) => first <= hits && hits <= last
  const term = (hits: number) =>
    choose(tries, hits) * over ** BigInt(hits) * (under - over) ** BigInt(tries - hits)
  const sumOf = (counts: number[]) => counts.reduce((sum, hits) => sum + term(hits), 0n)
  const whole = under ** BigInt(tries)
  // All of them make 1, so that the fewer terms are enough.
  const isMany = last - first > tries / 2
  const sum = isMany ? whole - sumOf(all.filter((hits) => !isWithin(hits))) : sumOf(all.filter(isWithin))
  return quotient(sum, whole)
}

function choose(all: number, some: number): bigint {
  let ways = 1n
  for (let each = 1; each <= Math.min(some, all - some); each += 1)
    ways = (ways * BigInt(all - each + 1)) / BigInt(each)
  return ways
}

/** A fraction of large whole numbers as a number, to all its figures down to 1e-200. */
function quotient(over: bigint, under: bigint): number {
  const figures = 10n ** 220n
  const text = ((over * figures) / under).toString()
  return Number(`${text}e-220`)
}
