import { compareAmounts } from '../convert/compare-amounts.ts'
import { readAmount } from '../convert/read-amount.ts'
import { endsOf } from './tolerance.ts'
import { readTurn } from './turn.ts'

/** Takes apart what manuals print in two units: `40 Nm (30 lbf·ft)`. `beside` is what stands in brackets. */
export function printedPair(text: string): { amount: string; beside?: string } {
  const [, amount, beside] = /^([^()]+?) ?\(([^()]+)\)$/.exec(text) ?? []
  return amount === undefined || beside === undefined ? { amount: text } : { amount, beside: beside.trim() }
}

/** Whether two figures are one torque within their rounding, or one angle; of a range both ends. */
export function areTheSame(amount: string, beside: string): boolean {
  const [turn, other] = [readTurn(amount), readTurn(beside)]
  if (turn !== undefined && other !== undefined) return turn === other
  const [figures, others] = [endsOf(amount), endsOf(beside)]
  return (
    figures.length === others.length &&
    figures.every((figure, index) => areOneTorque(figure, others[index] ?? ''))
  )
}

function areOneTorque(one: string, other: string): boolean {
  // Torques have no unit that is one thing here and another there.
  const [first, second] = [one, other].map((text) => readAmount(text, { units: 'metric' }))
  if (!first?.understood || !second?.understood) return false
  return (
    first.value.kind === 'torque' &&
    second.value.kind === 'torque' &&
    compareAmounts(first.value, second.value).agrees
  )
}
