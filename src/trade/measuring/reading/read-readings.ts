import { notUnderstood, type Reading, understood } from '../../reading.ts'
import {
  isInches,
  isMeasurable,
  joined,
  millimetresOf,
  numberFrom,
  type TypedNumber,
  withUnit,
} from './lengths.ts'
import type { MeasuringFault } from './measuring-fault.ts'
import { wordsOf } from './words-of.ts'

/** One reading with the words in front of it: `I1`, `top x`, `bore`. */
export interface LabelledReading {
  label: string[]
  mm: number
  typed: string
  spanMm?: number
}

export interface Readings {
  readings: LabelledReading[]
  /** Whether all numbers were typed without a unit. */
  isBare: boolean
  /** The unit of inches that some number has; empty where none has. */
  inches: string
}

const mostReadings = 200

/**
 * Reads readings: `0.02 0.03 0.05`, `0,02 0,03`, `2 1.5 2 thou`, `I1 0.14, I2 0.15`, `top x 76.01 y 76.02`,
 * `0.006 in over 6 in`. Numbers without a unit are millimetres; a unit behind the last one is that of all. A label
 * holds until the next one.
 */
export function readReadings(text: string): Reading<Readings, MeasuringFault> {
  const read = readAsTyped(text)
  return read.understood || readAsTyped(read.nearest).understood ? read : { ...read, nearest: EXAMPLE }
}

const EXAMPLE = '0.02 0.03 0.05'

function readAsTyped(text: string): Reading<Readings, MeasuringFault> {
  const form = joined(text)
  if (form === '') return notUnderstood('empty', '', EXAMPLE)
  const words = wordsOf(form)
  if (!words.understood) return words
  const found = collect(words.value)
  if (!found.understood) return found
  const all = found.value
  if (all.length > mostReadings) return notUnderstood('too-many', text.trim(), EXAMPLE)
  const unit = sharedUnit(all.flatMap(({ reading, span }) => (span ? [reading, span] : [reading])))
  if (!unit.understood) return unit
  const large = all
    .flatMap(({ reading, span }) => (span ? [reading, span] : [reading]))
    .find((number) => !isMeasurable(withOwn(number, unit.value)))
  if (large) return notUnderstood('number', large.typed, EXAMPLE)
  return understood({
    readings: all.map(({ label, reading, span }) => {
      const own = withOwn(reading, unit.value)
      const within = span && millimetresOf(withOwn(span, unit.value))
      return {
        label,
        mm: millimetresOf(own),
        typed: own.typed,
        ...(within !== undefined && { spanMm: within }),
      }
    }),
    isBare: all.every(({ reading }) => reading.unit === '') && unit.value === '',
    inches: [unit.value, ...all.map(({ reading }) => reading.unit)].find(isInches) ?? '',
  })
}

function withOwn(number: TypedNumber, unit: string): TypedNumber {
  return number.unit === '' ? withUnit(number, unit) : number
}

interface Found {
  label: string[]
  reading: TypedNumber
  span?: TypedNumber
}

function collect(words: readonly string[]): Reading<Found[], MeasuringFault> {
  const found: Found[] = []
  let [label, isOpen]: [string[], boolean] = [[], false]
  for (const [at, word] of words.entries()) {
    const number = numberFrom(word)
    const last = found.at(-1)
    const next = numberFrom(words[at + 1] ?? '')
    if (isWithin(word) && last && !isOpen && next) continue
    if (number && isWithin(words[at - 1] ?? '') && last && !isOpen) {
      if (number.number <= 0) return notUnderstood('number', word, `${last.reading.typed} over 150 mm`)
      last.span = number
    } else if (number) {
      found.push({ label, reading: number })
      isOpen = false
    } else if (/^[+-]?[\d.,]/.test(word) && !word.endsWith(':')) {
      return notUnderstood('number', word, nearestNumber(word))
    } else {
      label = isOpen ? [...label, word.replace(/:$/, '')] : [word.replace(/:$/, '')]
      isOpen = true
    }
  }
  if (found.length === 0) return notUnderstood('number', words.join(' '), `${label.join(' ')} 0.02`.trim())
  if (isOpen)
    return notUnderstood('label', label.join(' '), found.map(({ reading }) => reading.typed).join(' '))
  return understood(found)
}

function isWithin(word: string): boolean {
  return /^(?:over|within|per)$/i.test(word)
}

/** What is readable of a number with something else about it. */
function nearestNumber(word: string): string {
  const number = /^[+-]?\d+(?:[.,]\d+)?/.exec(word)?.[0]
  return number ?? '0.02'
}

/** The unit of the numbers that were typed without one: none is millimetres; inches are said behind the last. */
function sharedUnit(numbers: readonly TypedNumber[]): Reading<string, MeasuringFault> {
  const bare = numbers.find(({ unit }) => unit === '')
  const units = [...new Set(numbers.map(({ unit }) => unit).filter((unit) => unit !== ''))]
  const [unit = ''] = units
  if (!bare || units.length === 0) return understood(unit)
  const withOne = numbers.filter((number) => number.unit !== '')
  const isBehindLast = withOne.length === 1 && numbers.at(-1)?.unit !== ''
  if (units.length === 1 && (isBehindLast || unit.toLowerCase() === 'mm')) return understood(unit)
  return notUnderstood('unit', bare.typed, `${bare.typed} ${unit}`)
}
