import { readDecimal, tidy, withoutNoise } from '../number.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'

export interface Temperature {
  celsius: number
  typed: string
}

/** Why a temperature was not understood: nothing there; no number; Celsius or Fahrenheit not said; none that there is. */
export type TemperatureFault = 'empty' | 'number' | 'celsius-or-fahrenheit' | 'out-of-range'

const coldest = -100
const hottest = 200

/** Reads a temperature: `-25 °C`, `-25C`, `minus 13 F`. A bare number is asked about: C and F differ by far. */
export function readTemperature(text: string): Reading<Temperature, TemperatureFault> {
  const typed = text.trim()
  if (typed === '') return notUnderstood('empty', '', '-25 °C')
  const form = tidy(text)
    .toLowerCase()
    .replace(/^minus ?/, '-')
  const match =
    /^([+-]? ?[\d.,]{1,12}) ?(?:°|deg(?:rees?)?\.?)? ?(c|f|celsius|centigrade|fahrenheit)?\.?$/.exec(form)
  const number = readDecimal(match?.[1]?.replace(' ', '') ?? '')
  if (number === undefined) return notUnderstood('number', typed, '-25 °C')
  const unit = match?.[2]
  if (unit === undefined) return notUnderstood('celsius-or-fahrenheit', typed, `${number} °C`)
  const celsius = unit.startsWith('f') ? withoutNoise((number - 32) / 1.8) : number
  if (celsius < coldest || celsius > hottest) return notUnderstood('out-of-range', typed, '-25 °C')
  return understood({ celsius, typed })
}

/** Degrees Fahrenheit of degrees Celsius. */
export function fahrenheit(celsius: number): number {
  return withoutNoise(celsius * 1.8 + 32)
}
