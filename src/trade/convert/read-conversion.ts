import type { UnitSystem } from '../quantity.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import { type Comparison, compareAmounts } from './compare-amounts.ts'
import { type Amount, type AmountFault, readAmount } from './read-amount.ts'
import { inUnit, type Kind, type Unit, unitsOf } from './units.ts'

/** An amount in other units, or figures that are said to be the same amount. */
export type Conversion =
  | { amount: Amount; in: InUnit[] }
  /** Each further figure against the first. */
  | { amount: Amount; comparisons: Comparison[] }

export interface InUnit {
  unit: Unit
  number: number
}

/**
 * Reads `22 lbf·ft`, `22 lbf·ft in kgf·m`, and what a manual prints in two units: `0.10 mm (0.004 in)`, `1 mm = 0.04 in`,
 * `36 Nm (367 kgf·cm, 27 lbf·ft)`. An amount of another kind than the first is a fault: `22 Nm in litres`.
 */
export function readConversion(
  text: string,
  options: { units: UnitSystem },
): Reading<Conversion, AmountFault> {
  const [first = '', ...others] = figuresOf(text)
  // `120 in lb` is an amount, not 120 of nothing in pounds.
  const isPlain = others.length > 0 || readAmount(first, options).understood
  const wanted = isPlain ? undefined : splitWanted(first)
  const amount = readAmount(wanted?.amount ?? first, options)
  if (!amount.understood) return amount
  const { kind } = amount.value
  if (wanted) {
    const unit = readUnit(wanted.unit, kind, options)
    if (!unit.understood) {
      const other = unitsOf[kind].find(({ name }) => name !== amount.value.unit.name)
      return { ...unit, nearest: `${amount.value.typed} in ${other?.name}` }
    }
    return understood({ amount: amount.value, in: [inOther(amount.value, unit.value)] })
  }
  if (others.length === 0) {
    const units = unitsOf[kind].filter(({ name }) => name !== amount.value.unit.name)
    return understood({ amount: amount.value, in: units.map((unit) => inOther(amount.value, unit)) })
  }
  const comparisons: Comparison[] = []
  for (const other of others) {
    const reading = readAmount(other, options)
    if (!reading.understood) return reading
    if (reading.value.kind !== kind) {
      const example = unitsOf[kind].find(({ name }) => name !== amount.value.unit.name)
      const number = example === undefined ? 0 : inUnit(amount.value.base, example)
      const nearest = `${amount.value.typed} = ${Number(number.toPrecision(3))} ${example?.name}`
      return notUnderstood('kind', other, nearest)
    }
    comparisons.push(compareAmounts(amount.value, reading.value))
  }
  return understood({ amount: amount.value, comparisons })
}

function inOther({ base }: Amount, unit: Unit): InUnit {
  return { unit, number: inUnit(base, unit) }
}

/** The figures of `a (b, c)`, `a = b`, `a / b`. A slash within a fraction, and a comma within a number, part nothing. */
function figuresOf(text: string): string[] {
  const parted = text.replace(
    /\(([^()]*)\)/g,
    (_, inner: string) => `=${inner.replace(/, |,(?!\d)|; ?/g, '=')}`,
  )
  return parted
    .split(/=| \/ /)
    .map((part) => part.replace(/,\s*$/, '').trim())
    .filter((part, i) => i === 0 || part !== '')
}

function splitWanted(text: string): { amount: string; unit: string } | undefined {
  const match = /^(.*\S) +(?:in|to|as) +([^\d].*)$/i.exec(text.trim())
  return match ? { amount: match[1] ?? '', unit: match[2] ?? '' } : undefined
}

function readUnit(text: string, kind: Kind, options: { units: UnitSystem }): Reading<Unit, AmountFault> {
  const one = readAmount(`1 ${text}`, options)
  if (!one.understood) return { ...one, part: text }
  return one.value.kind === kind ? understood(one.value.unit) : notUnderstood('kind', text, '')
}
