import type { WorkedOut } from '../../session/work-out.ts'
import type { Comparison } from '../../trade/convert/compare-amounts.ts'
import { figure, NOT_A_SPECIFICATION } from './figures.ts'

type Converted = Extract<WorkedOut, { sum: 'convert' }>['conversion']
type Amount = Converted['amount']

/** An amount in the other units of its kind, or whether printed figures agree with each other. */
export function convertText({ conversion }: Extract<WorkedOut, { sum: 'convert' }>): string[] {
  const { amount } = conversion
  if ('comparisons' in conversion) {
    return [...conversion.comparisons.flatMap(comparisonText), NOT_A_SPECIFICATION]
  }
  const [first, ...others] = conversion.in.map(({ unit, number }) => `${shown(number, amount)} ${unit.name}`)
  return [
    `${amountText(amount)} = ${first}`,
    ...(others.length > 0 ? [others.join(' · ')] : []),
    NOT_A_SPECIFICATION,
  ]
}

function comparisonText({ one, other, agrees, converted, apart, decimalSlip }: Comparison): string[] {
  const pair = `${amountText(one)} and ${amountText(other)}`
  const arithmetic = `${amountText(one)} = ${shown(converted, one)} ${other.unit.name}`
  if (agrees) return [`${pair} agree: ${arithmetic}, within the rounding.`]
  const slip =
    decimalSlip === undefined
      ? `They are ${percentApart(apart)} apart: rounded more than written, or one is wrong.`
      : `A decimal point in the wrong place? ${figure(other.number * decimalSlip)} ${other.unit.name} would agree.`
  return [`${pair} do not agree: ${arithmetic}.`, slip]
}

function amountText({ typed, number, unit, step }: Amount): string {
  // A fraction stays one: 1/2 in. So do zeros at the end: 0.10 mm says more than 0.1 mm.
  if (step === 0) return typed
  return `${number.toFixed(Math.max(0, Math.round(-Math.log10(step))))} ${unit.name}`
}

/** With a figure more than was typed, so that nothing measured is lost. */
function shown(number: number, { number: typed, step }: Amount): string {
  const places = step > 0 && typed !== 0 ? Math.floor(Math.log10(Math.abs(typed) / step) + 1e-9) + 2 : 5
  return figure(number, Math.min(9, Math.max(4, places)))
}

function percentApart(apart: number): string {
  return `${figure(Math.abs(apart) * 100, 2)} %`
}
