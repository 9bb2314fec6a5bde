import { readFraction, readWhole, tidy, withoutNoise } from '../number.ts'
import { type NotUnderstood, understood } from '../reading.ts'
import { type TwoWays, twoWays } from '../two-ways.ts'

/** A duration, in whole minutes and in the words in which it was typed. */
export interface Duration {
  minutes: number
  typed: string
}

/**
 * Why a duration was not understood: no number in it, as in `overnight`; a unit that is none; one said twice; nothing or
 * less; more than a year; other words.
 */
export type DurationFault = 'no-number' | 'unit' | 'twice' | 'not-positive' | 'too-long' | 'words'

/** `nearest` is null where a figure would have to be made up: the maker of the sealant gives it, not this program. */
export type NoDuration = Omit<NotUnderstood<DurationFault>, 'nearest'> & { nearest: string | null }

export type DurationReading = { understood: true; value: Duration } | NoDuration | TwoWays

type Unit = 'min' | 'h' | 'day' | 'week'

const minutesIn: Readonly<Record<Unit, number>> = { min: 1, h: 60, day: 24 * 60, week: 7 * 24 * 60 }

const unitWords: readonly [Unit, RegExp][] = [
  ['min', /^(?:m|mins?|minutes?)$/],
  ['h', /^(?:h|hrs?|hours?)$/],
  ['day', /^(?:d|days?)$/],
  ['week', /^(?:w|wks?|weeks?)$/],
]

const mostMinutes = 366 * minutesIn.day

/**
 * Reads `5 min`, `24 h`, `1.5 h`, `1 h 30 min`, `1:30`, `1½ h`, `2 days`, `half an hour`. A number alone and a range, `24-48
 * h`, have two readings. To the whole minute.
 */
export function readDuration(text: string): DurationReading {
  const typed = text.trim()
  const form = plainForm(text)
  const clock = /^(\d{1,3}):([0-5]\d)(?: ?h)?$/.exec(form)
  if (clock) return inMinutes(60 * Number(clock[1]) + Number(clock[2]), typed)
  return rangeOrBareNumber(form, typed) ?? sumOfParts(form, typed)
}

/** The longest whole units that a person says: minutes, hours up to two days, days. `1 h 30 min`, `48 h` is `2 days`. */
export function durationText(minutes: number): string {
  const days = minutes < 2 * minutesIn.day ? 0 : Math.floor(minutes / minutesIn.day)
  const rest = minutes - days * minutesIn.day
  const hours = Math.floor(rest / 60)
  const parts = [
    days > 0 && `${days} days`,
    hours > 0 && `${hours} h`,
    (rest % 60 > 0 || minutes === 0) && `${rest % 60} min`,
  ]
  return parts.filter((part) => part !== false).join(' ')
}

function plainForm(text: string): string {
  return tidy(text)
    .toLowerCase()
    .replace(/\bhalf an? (?=[a-z])/g, '0.5 ')
    .replace(/\ban? (?=[a-z])/g, '1 ')
    .replace(/[a-z]+/g, (word) => (readWhole(word) ?? word).toString())
    .replace(/\band\b|(?<=[a-z]),/g, ' ')
    .replace(/ +/g, ' ')
    .trim()
}

const number = String.raw`\d[\d.,]*(?:[- ]\d+\/\d+|\/\d+)?`
const range = new RegExp(`^(${number}) ?(?:-|to|or|\\.{2,3}) ?(${number}) ?([a-z]*)$`)

function rangeOrBareNumber(form: string, typed: string): TwoWays | null {
  const [, from, to, unit = ''] = range.exec(form) ?? []
  // `1-1/2 h` is one and a half.
  const isRange = from !== undefined && to !== undefined && !to.includes('/') && unitOf(unit) !== null
  if (isRange && isUnderstood(`${from} ${unit}`) && isUnderstood(`${to} ${unit}`)) {
    return twoWays(typed, `${from} ${unit}`, `${to} ${unit}`)
  }
  const isBare = readFraction(form) !== undefined && isUnderstood(`${form} min`) && isUnderstood(`${form} h`)
  return isBare ? twoWays(typed, `${form} min`, `${form} h`) : null
}

/** `1 h 30 min`, `1h30`: numbers with a unit each, but for minutes behind hours. */
function sumOfParts(form: string, typed: string): DurationReading {
  const parts = [...form.matchAll(new RegExp(`(${number}) ?([a-z]*)`, 'g'))]
  if (parts.length === 0) return fault('no-number', typed, null)
  const other = form.replace(new RegExp(`(${number}) ?([a-z]*)`, 'g'), '').trim()
  const before: Unit[] = []
  let minutes = 0
  for (const [part, figures = '', word = ''] of parts) {
    const unit = word === '' && before.at(-1) === 'h' ? 'min' : unitOf(word)
    const count = readFraction(figures)
    if (count === undefined) return fault('words', part, null)
    if (unit === null) return fault('unit', part, mended(form, part, figures, word))
    if (before.includes(unit)) return fault('twice', part, understoodOrNull(form.replace(part, '')))
    before.push(unit)
    minutes += count * minutesIn[unit]
  }
  if (other === '') return inMinutes(minutes, typed)
  const withUnits = parts.filter(([, , word]) => word !== '')
  const kept = understoodOrNull(withUnits.map(([part]) => part).join(' '))
  return fault(other === '-' ? 'not-positive' : 'words', typed, kept)
}

function inMinutes(exact: number, typed: string): DurationReading {
  const minutes = Math.round(withoutNoise(exact))
  if (minutes < 1) return fault('not-positive', typed, null)
  if (minutes > mostMinutes) return fault('too-long', typed, null)
  return understood({ minutes, typed })
}

function unitOf(word: string): Unit | null {
  return unitWords.find(([, form]) => form.test(word))?.[0] ?? null
}

/** The unit that begins like a word which is none: `hous` is taken for hours, `month` for nothing. */
function mended(form: string, part: string, figures: string, word: string): string | null {
  const [unit] =
    unitWords.find(([name]) => word !== '' && !/^mo/.test(word) && word.startsWith(name.charAt(0))) ?? []
  return unit === undefined ? null : understoodOrNull(form.replace(part, `${figures} ${unit} `))
}

function understoodOrNull(form: string): string | null {
  const tidied = tidy(form)
  return isUnderstood(tidied) ? tidied : null
}

function isUnderstood(form: string): boolean {
  return readDuration(form).understood
}

function fault(code: DurationFault, part: string, nearest: string | null): NoDuration {
  return { understood: false, code, part, nearest }
}
