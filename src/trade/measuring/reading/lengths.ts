import { readFraction, tidy, withoutNoise } from '../../number.ts'
import { readLength } from '../../quantity.ts'

/** A number with or without its unit, as it stands in a line. */
export interface TypedNumber {
  number: number
  /** As typed; empty where there is none. */
  unit: string
  typed: string
}

/** A unit of length as it may stand behind a number; longest first. */
export const UNIT = '(?:microns?|µm|μm|um|mm|cm|thou|inch(?:es)?|in\\.?(?! any)(?![\\p{L}])|")'
/** A number of a reading: signed, decimal with point or comma, or a fraction. */
export const NUMBER = '[+-]?(?:\\d+(?:-\\d+)?\\/\\d+|\\d+(?:[.,]\\d+)?|[.,]\\d+)'

/** Signs as a keyboard without special ones gives them, and each number joined with its unit: `0.02mm`. */
export function joined(text: string): string {
  return tidy(text)
    .replace(/…|\.{3,}/gu, '..')
    .replace(/([+±-]) (?=[\d.,])/gu, '$1')
    .replace(new RegExp(`(?<=\\d) (?=${UNIT}(?![\\p{L}\\d]))`, 'giu'), '')
}

/** Reads a word as a number with or without a unit; undefined for anything else. */
export function numberFrom(word: string): TypedNumber | undefined {
  const match = new RegExp(`^(${NUMBER})(${UNIT})?$`, 'iu').exec(word)
  const [, numberText = '', unitText = ''] = match ?? []
  const sign = numberText.startsWith('-') ? -1 : 1
  const number = match ? readFraction(numberText.replace(/^[+-]/, '')) : undefined
  if (number === undefined || !Number.isFinite(number)) return undefined
  // A quote is never told back: double quotes are for words to type.
  const unit = unitText.replace(/\.$/, '').replace('"', 'in')
  return { number: sign * number, unit, typed: unit === '' ? numberText : `${numberText} ${unit}` }
}

/** Millimetres of a number of a unit; of millimetres where there is no unit. */
export function millimetresOf({ number, unit }: TypedNumber): number {
  if (unit === '') return number
  const one = readLength(`1 ${unit}`)
  return one.understood ? withoutNoise(number * one.value.millimetres) : number
}

// Nothing that is measured like this is longer.
const mostMm = 10_000

/** Whether a length is one that can be measured at a machine. */
export function isMeasurable(number: TypedNumber): boolean {
  return Math.abs(millimetresOf(number)) <= mostMm
}

/** Whether a unit is one of inches: thou and inches, beside which a bare number is in doubt. */
export function isInches(unit: string): boolean {
  return /^(?:thou|in|inch|inches|")$/i.test(unit)
}

/** A number with the unit of others that were typed with theirs. */
export function withUnit(number: TypedNumber, unit: string): TypedNumber {
  return unit === '' ? number : { ...number, unit, typed: `${number.typed} ${unit}` }
}
