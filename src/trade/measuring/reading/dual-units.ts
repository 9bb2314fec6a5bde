import { compareAmounts } from '../../convert/compare-amounts.ts'
import { readAmount } from '../../convert/read-amount.ts'
import { notUnderstood, type Reading, understood } from '../../reading.ts'
import { joined, NUMBER, numberFrom, type TypedNumber, UNIT, withUnit } from './lengths.ts'
import type { MeasuringFault } from './measuring-fault.ts'

const one = `${NUMBER}(?: ?${UNIT})?`
const amounts = `${one}(?: ?(?:\\.\\.|-|to) ?${one})?`
const twins = new RegExp(`(${amounts}) ?(?:\\(|/ ?)(${amounts})\\)?`, 'giu')

/**
 * A text without the figures that say the same once more in the other unit: `0.10 mm (0.004 in)` is `0.10 mm`. Both
 * have to agree within what they were rounded to; where they do not, a figure is misprinted or mistyped.
 */
export function withoutTwins(form: string): Reading<string, MeasuringFault> {
  for (const [whole, first = '', second = ''] of form.matchAll(twins)) {
    const [one, other] = [numbersOf(first), numbersOf(second)]
    const isPair = one.length === other.length && one.every(({ unit }, i) => unit !== other[i]?.unit)
    if (!isPair || [...one, ...other].some(({ unit }) => unit === '')) {
      const [of = '', like = ''] = [first, second].map((part) => part.replace(/ ?[a-z"]+$/iu, ''))
      return notUnderstood('unit', whole, `${of} mm (${like} in)`)
    }
    for (const [i, number] of one.entries()) {
      if (!agree(number, other[i] ?? number))
        return notUnderstood('dual-units', whole, other.map(({ typed }) => typed).join('..'))
    }
  }
  return understood(form.replace(twins, '$1'))
}

function numbersOf(text: string): TypedNumber[] {
  const numbers = joined(text)
    .replace(/ ?(?:\.\.|to|(?<=\S)-) ?/giu, ' ')
    .split(' ')
    .flatMap((word) => numberFrom(word) ?? [])
  const unit = numbers.at(-1)?.unit ?? ''
  return numbers.map((number) => (number.unit === '' ? withUnit(number, unit) : number))
}

function agree(one: TypedNumber, other: TypedNumber): boolean {
  const [first, second] = [one, other].map(({ typed }) => readAmount(typed, { units: 'metric' }))
  return (
    first?.understood === true &&
    second?.understood === true &&
    compareAmounts(first.value, second.value).agrees
  )
}
