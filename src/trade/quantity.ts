import { inchesToMillimetres, readDecimal, readFraction, tidy, withoutNoise } from './number.ts'
import { type NotUnderstood, notUnderstood, type Reading, understood } from './reading.ts'
import {
  imperialLitres,
  inchUnits,
  litreUnits,
  measureNames,
  measureText,
  millimetreUnits,
  torqueUnits,
  usLitres,
} from './unit-factors.ts'

/** The units a person takes for granted: decides what a bare `gal` or `qt` is. */
export type UnitSystem = 'metric' | 'us'

export interface Volume {
  litres: number
  typed: string
}

export interface Torque {
  newtonMetres: number
  typed: string
}

export interface Length {
  millimetres: number
  typed: string
}

/**
 * Why a quantity was not understood: nothing there; no number; a comma that may be a decimal comma or part two
 * thousands; no unit or none of this kind; a gallon, quart, pint or fluid ounce that may be US or imperial; zero
 * or less; more than there can be.
 */
export type QuantityFault =
  | 'empty'
  | 'number'
  | 'thousands'
  | 'unit'
  | 'us-or-imperial'
  | 'not-positive'
  | 'too-large'

const mostLitres = 10_000
// A hub nut of a heavy lorry takes about 1000 N·m.
const mostNewtonMetres = 3000
const mostMillimetres = 100_000

/**
 * Reads a volume: `2.1 L`, `2,1 l`, `2100 ml`, `2 US qt`, `3 imp qt`. A bare gallon, quart, pint or fluid ounce is
 * the US one where `units` is `us`, and is asked about otherwise: the two quarts differ by a fifth.
 */
export function readVolume(text: string, options: { units: UnitSystem }): Reading<Volume, QuantityFault> {
  const parts = numberAndUnit(text, '2.1 L')
  if (!parts.understood) return usable(parts, (nearest) => readVolume(nearest, options), '2.1 L')
  const { number, unit, typed } = parts.value
  const name = unit.replace(/[ .-]/g, '')
  const factor = litreUnits.get(name) ?? measureLitres(name, options.units)
  if (factor === undefined) return notUnderstood('unit', typed, `${exampleNumber(number, 2.1)} L`)
  if (typeof factor === 'string') {
    return notUnderstood('us-or-imperial', typed, `${exampleNumber(number, 1)} US ${factor}`)
  }
  if (number <= 0) return notUnderstood('not-positive', typed, '2.1 L')
  const litres = withoutNoise(number * factor)
  if (litres > mostLitres) return notUnderstood('too-large', typed, '2.1 L')
  return understood({ litres, typed })
}

/**
 * Reads a torque: `22 Nm`, `22 N·m`, `16 lbf·ft`, `16 ft-lb`, `120 in-lb`, `2,2 kgf·m`. Zero, less, and more than
 * 3000 N·m are not understood as a torque.
 */
export function readTorque(text: string): Reading<Torque, QuantityFault> {
  const parts = numberAndUnit(text, '22 Nm')
  if (!parts.understood) return usable(parts, readTorque, '22 Nm')
  const { number, unit, typed } = parts.value
  const name = unit.replace(/[ .·*-]/g, '')
  const factor =
    torqueUnits.get(name) ??
    torqueUnits.get(name.replace(/s$/, '')) ??
    torqueUnits.get(name.replace('lbs', 'lb'))
  if (factor === undefined) return notUnderstood('unit', typed, `${exampleNumber(number, 22)} Nm`)
  if (number <= 0) return notUnderstood('not-positive', typed, '22 Nm')
  const newtonMetres = withoutNoise(number * factor)
  if (newtonMetres > mostNewtonMetres) return notUnderstood('too-large', typed, '22 Nm')
  return understood({ newtonMetres, typed })
}

/** Reads a length: `0.05 mm`, `0,05 mm`, `0.002 in`, `2 thou`, `1/2"`. Zero is a length, less is none. */
export function readLength(text: string): Reading<Length, QuantityFault> {
  const parts = numberAndUnit(text, '0.05 mm')
  if (!parts.understood) return usable(parts, readLength, '0.05 mm')
  const { number, unit, typed } = parts.value
  const name = unit.length > 2 ? unit.replace(/s$/, '') : unit
  const inches = inchUnits.get(name)
  const factor = millimetreUnits.get(name) ?? (inches === undefined ? undefined : inchesToMillimetres(inches))
  if (factor === undefined) return notUnderstood('unit', typed, `${exampleNumber(number, 0.05)} mm`)
  if (number < 0) return notUnderstood('not-positive', typed, '0.05 mm')
  const millimetres = withoutNoise(number * factor)
  if (millimetres > mostMillimetres) return notUnderstood('too-large', typed, '0.05 mm')
  return understood({ millimetres, typed })
}

/** What is nearest to a number with a comma may have a unit of another kind: then any example is nearer. */
function usable(
  parts: NotUnderstood<QuantityFault>,
  read: (text: string) => { understood: boolean },
  example: string,
): NotUnderstood<QuantityFault> {
  const isOfKind = parts.code !== 'thousands' || read(parts.nearest).understood
  return isOfKind ? parts : { ...parts, nearest: example }
}

/** Litres of a measure, or the measure's name where it may be either of two. */
function measureLitres(name: string, units: UnitSystem): number | string | undefined {
  const match = /^(us|imperial|imp|uk)?([a-z]+?)s?(us|imperial|imp|uk)?$/.exec(name)
  const measure = measureNames.get(match?.[2] ?? '')
  if (!match || measure === undefined) return undefined
  const system = match[1] ?? match[3] ?? (units === 'us' ? 'us' : undefined)
  if (system === undefined) return measureText[measure]
  return system === 'us' ? usLitres[measure] : imperialLitres[measure]
}

export interface NumberAndUnit {
  number: number
  /** As typed, tidied: `0.10`, `1-1/2`. */
  numberText: string
  /** Lower case. */
  unit: string
  typed: string
}

/** Splits `0.10 mm` into its number and its unit, whatever the unit is; none is an empty one. */
export function numberAndUnit(text: string, example: string): Reading<NumberAndUnit, QuantityFault> {
  const typed = text.trim()
  const form = tidy(text).toLowerCase()
  if (form === '') return notUnderstood('empty', '', example)
  const match = /^([+-]?[\d.,]{1,20}(?:[ -]\d{1,3}\/\d{1,3}|\/\d{1,3})?) ?(\D.{0,40})?$/.exec(form)
  const [, numberText = '', unit = ''] = match ?? []
  if (/^[1-9]\d{0,2}(?:,\d{3})+$/.test(numberText)) {
    const groups = numberText.split(',').length
    if (unit === '' || groups > 2) return notUnderstood('thousands', typed, example)
    const plain = numberText.replace(',', /^(?:ml|cc|ccm|cm3|cm³)$/.test(unit) ? '' : '.')
    return notUnderstood('thousands', typed, `${plain} ${typed.slice(-unit.length)}`)
  }
  const number = readDecimal(numberText) ?? readFraction(numberText)
  if (number === undefined) return notUnderstood('number', typed, example)
  return understood({ number, numberText, unit, typed })
}

/** The number typed, where it makes a good example. */
function exampleNumber(number: number, otherwise: number): number {
  return number >= 0.001 && number < 1000 ? Number(number.toFixed(3)) : otherwise
}
