import type { UnitSystem } from '../quantity.ts'
import { type Reading, understood } from '../reading.ts'
import { type Amount, type AmountFault, readAmount } from './read-amount.ts'
import { fromUnit } from './units.ts'

/** A figure as manuals print it: one amount, one with its tolerance, or a range from one to another. */
export interface Figure {
  form: 'single' | 'tolerance' | 'range'
  /** One, or two of the same unit: `40 ± 4 N·m`, `37..43 N·m`. */
  amounts: Amount[]
  typed: string
}

// A slash behind the second number would make it a fraction: 1-1/2 in.
const twoNumbers = /^([+-]?[\d.,]*\d) ?(±|\+\/?-|\.{2,3}|…|–|-| to ) ?([\d.,]*\d) ?([^\d/][^\d].*|[^\d/])$/i

/** Reads `40 N·m`, `40 ± 4 N·m`, `40 +/- 4 N·m`, `37..43 N·m`, `37-43 N·m`. */
export function readFigure(text: string, options: { units: UnitSystem }): Reading<Figure, AmountFault> {
  const typed = text.trim()
  const match = twoNumbers.exec(typed)
  if (!match) {
    const amount = readAmount(typed, options)
    return amount.understood ? understood({ form: 'single', amounts: [amount.value], typed }) : amount
  }
  const [, first = '', sign = '', second = '', unit = ''] = match
  const one = readAmount(`${first} ${unit}`, options)
  if (!one.understood) return one
  const other = readAmount(`${second} ${unit}`, options)
  if (!other.understood) return other
  const form = /[±+]/.test(sign) ? 'tolerance' : 'range'
  const amounts = [one.value, form === 'tolerance' ? difference(other.value) : other.value]
  return understood({ form, amounts, typed })
}

/** A difference of temperatures is counted from no zero: 4 °C are 7.2 °F. */
function difference(amount: Amount): Amount {
  const unit = { name: amount.unit.name, scale: amount.unit.scale }
  return { ...amount, unit, base: fromUnit(amount.number, unit) }
}
