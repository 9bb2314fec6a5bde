import type { WorkedOut } from '../../session/work-out.ts'
import type { Comparison } from '../../trade/convert/compare-amounts.ts'
import { figure, NOT_A_SPECIFICATION } from './figures.ts'

type Figure = Extract<WorkedOut, { sum: 'convert' }>['conversion']['figure']
type Amount = Figure['amounts'][number]

/** A figure in the other units of its kind, or whether printed figures agree with each other. */
export function convertText({ conversion }: Extract<WorkedOut, { sum: 'convert' }>): string[] {
  const { figure } = conversion
  if ('comparisons' in conversion) {
    return [...conversion.comparisons.flatMap(comparisonText), NOT_A_SPECIFICATION]
  }
  const [first, ...others] = conversion.in.map(
    ({ unit, numbers }) =>
      `${joint(
        figure,
        numbers.map((each, i) => shown(each, figure.amounts[i])),
      )} ${unit.name}`,
  )
  return [
    `${figureText(figure)} = ${first}`,
    ...(others.length > 0 ? [others.join(' · ')] : []),
    NOT_A_SPECIFICATION,
  ]
}

function figureText(of: Figure): string {
  const [amount] = of.amounts
  if (amount === undefined || amount.step === 0) return of.typed
  return `${joint(of, of.amounts.map(numberText))} ${amount.unit.name}`
}

/** `40 ± 4`, `37 to 43` */
function joint({ form }: Figure, numbers: string[]): string {
  return numbers.join(form === 'tolerance' ? ' ± ' : ' to ')
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

function amountText(amount: Amount): string {
  return amount.step === 0 ? amount.typed : `${numberText(amount)} ${amount.unit.name}`
}

/** Zeros at the end stay: 0.10 mm says more than 0.1 mm. */
function numberText({ number, step }: Amount): string {
  return step === 0 ? figure(number) : number.toFixed(Math.max(0, Math.round(-Math.log10(step))))
}

/** With a figure more than was typed, so that nothing measured is lost. */
function shown(number: number, typed: Amount | undefined): string {
  const { number: from = 0, step = 0 } = typed ?? {}
  const places = step > 0 && from !== 0 ? Math.floor(Math.log10(Math.abs(from) / step) + 1e-9) + 2 : 5
  return figure(number, Math.min(9, Math.max(4, places)))
}

function percentApart(apart: number): string {
  return `${figure(Math.abs(apart) * 100, 2)} %`
}
