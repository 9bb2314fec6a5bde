import type { UnitSystem } from '../quantity.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import { type Comparison, compareAmounts } from './compare-amounts.ts'
import { type AmountFault, readAmount } from './read-amount.ts'
import { type Figure, readFigure } from './read-figure.ts'
import { inUnit, type Kind, type Unit, unitsOf } from './units.ts'

/** A figure in other units, or figures that are said to be the same. */
export type Conversion =
  | { figure: Figure; in: InUnit[] }
  /** Each amount of the further figures against that of the first. */
  | { figure: Figure; comparisons: Comparison[] }

export interface InUnit {
  unit: Unit
  /** As many as the figure has amounts. */
  numbers: number[]
}

/**
 * Reads `22 lbf·ft`, `22 lbf·ft in kgf·m`, and what a manual prints in two units: `0.10 mm (0.004 in)`, `1 mm = 0.04 in`,
 * `40 ± 4 N·m (30 ± 3 lbf·ft)`, `36 Nm (367 kgf·cm, 27 lbf·ft)`. A figure of another kind or form than the first is a
 * fault: `22 Nm in litres`.
 */
export function readConversion(
  text: string,
  options: { units: UnitSystem },
): Reading<Conversion, AmountFault> {
  const [first = '', ...others] = figuresOf(text)
  // `120 in lb` is an amount, not 120 of nothing in pounds.
  const isPlain = others.length > 0 || readFigure(first, options).understood
  const wanted = isPlain ? undefined : splitWanted(first)
  const figure = readFigure(wanted?.figure ?? first, options)
  if (!figure.understood) return figure
  if (others.length > 0) return readPairs(figure.value, others, options)
  const { kind, unit } = amountOf(figure.value)
  if (wanted) {
    const asked = readUnit(wanted.unit, kind, options)
    if (asked.understood)
      return understood({ figure: figure.value, in: [inOther(figure.value, asked.value)] })
    return { ...asked, nearest: `${figure.value.typed} in ${otherUnit(kind, unit).name}` }
  }
  const units = unitsOf[kind].filter(({ name }) => name !== unit.name)
  return understood({ figure: figure.value, in: units.map((each) => inOther(figure.value, each)) })
}

function readPairs(
  figure: Figure,
  others: readonly string[],
  options: { units: UnitSystem },
): Reading<Conversion, AmountFault> {
  const comparisons: Comparison[] = []
  for (const text of others) {
    const other = readFigure(text, options)
    if (!other.understood) return other
    const { kind, unit } = amountOf(figure)
    if (amountOf(other.value).kind !== kind || other.value.form !== figure.form) {
      const { name, numbers } = { ...otherUnit(kind, unit), ...inOther(figure, otherUnit(kind, unit)) }
      const sign = figure.form === 'tolerance' ? ' ± ' : '..'
      const nearest = numbers.map((number) => Number(number.toPrecision(3))).join(sign)
      return notUnderstood('kind', text, `${figure.typed} = ${nearest} ${name}`)
    }
    for (const [i, amount] of figure.amounts.entries()) {
      const beside = other.value.amounts[i]
      if (beside) comparisons.push(compareAmounts(amount, beside))
    }
  }
  return understood({ figure, comparisons })
}

/** A tolerance is a difference, and converted without the zero of the scale. */
function inOther({ amounts, form }: Figure, unit: Unit): InUnit {
  const scaleOnly = { name: unit.name, scale: unit.scale }
  const isDifference = (at: number) => form === 'tolerance' && at > 0
  return { unit, numbers: amounts.map(({ base }, at) => inUnit(base, isDifference(at) ? scaleOnly : unit)) }
}

function otherUnit(kind: Kind, { name }: Unit): Unit {
  const unit = unitsOf[kind].find((each) => each.name !== name)
  if (unit === undefined) throw new Error(`${kind} has one unit`)
  return unit
}

function amountOf({ amounts }: Figure) {
  const [amount] = amounts
  if (amount === undefined) throw new Error('a figure has an amount')
  return amount
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

function splitWanted(text: string): { figure: string; unit: string } | undefined {
  const match = /^(.*\S) +(?:in|to|as) +([^\d].*)$/i.exec(text.trim())
  return match ? { figure: match[1] ?? '', unit: match[2] ?? '' } : undefined
}

function readUnit(text: string, kind: Kind, options: { units: UnitSystem }): Reading<Unit, AmountFault> {
  const one = readAmount(`1 ${text}`, options)
  if (!one.understood) return { ...one, part: text }
  return one.value.kind === kind ? understood(one.value.unit) : notUnderstood('kind', text, '')
}
