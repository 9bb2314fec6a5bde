import type { Amount } from './read-amount.ts'
import { fromUnit, inUnit } from './units.ts'

/** Two figures that are said to be the same amount. */
export interface Comparison {
  one: Amount
  other: Amount
  /** Some amount rounds to both figures, each in the places in which it was written. */
  agrees: boolean
  /** The first in the unit of the other. */
  converted: number
  /** How far the other is from the first, as a share of the first: 0.017 is 1.7 % more. */
  apart: number
  /** What the other would have to be multiplied by to agree: 0.1, 10, 100. A decimal point in the wrong place. */
  decimalSlip?: number
}

const decimalSlips = [10, 0.1, 100, 0.01, 1000, 0.001]

/** Whether two figures of one kind agree within their rounding: 0.10 mm and 0.004 in do, 1.0 mm and 0.004 in do not. */
export function compareAmounts(one: Amount, other: Amount): Comparison {
  const agrees = overlap(one, other)
  const slip = agrees ? undefined : decimalSlips.find((factor) => overlap(one, multiplied(other, factor)))
  return {
    one,
    other,
    agrees,
    converted: inUnit(one.base, other.unit),
    apart: one.base === 0 ? (other.base === 0 ? 0 : 1) : (other.base - one.base) / Math.abs(one.base),
    ...(slip !== undefined && { decimalSlip: slip }),
  }
}

/** Whether what rounds to one figure and what rounds to the other have an amount in common. */
function overlap(one: Amount, other: Amount): boolean {
  const [oneLeast, oneMost] = roundedFrom(one, other)
  const [otherLeast, otherMost] = roundedFrom(other, one)
  const noise = 1e-9 * Math.max(Math.abs(one.base), Math.abs(other.base))
  return oneLeast <= otherMost + noise && otherLeast <= oneMost + noise
}

function roundedFrom(amount: Amount, beside: Amount): [number, number] {
  const half = isFactor(amount, beside) ? 0 : amount.step / 2
  return [fromUnit(amount.number - half, amount.unit), fromUnit(amount.number + half, amount.unit)]
}

/** A bare 1 beside a figure of three places or more states a factor, and is exact: 1 imp gal = 4.546 l. */
function isFactor({ number, step }: Amount, beside: Amount): boolean {
  return number === 1 && step === 1 && beside.step > 0 && Math.abs(beside.number) / beside.step >= 100
}

function multiplied(amount: Amount, factor: number): Amount {
  const number = amount.number * factor
  return { ...amount, number, base: fromUnit(number, amount.unit), step: amount.step * factor }
}
