import { readWhole, tidy } from '../number.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import type { TwoWays } from '../two-ways.ts'
import { dayNameLike, monthNamed, weekdayNamed } from './day-names.ts'
import { dayOfMonthSaid, readFigureDate } from './figure-date.ts'

/** A date as it was said, before anybody knows what day it is today. Whether there is such a day is not looked at. */
export type DateSaid =
  /** `2026-12-04`. */
  | { said: 'date'; year: number; month: number; day: number }
  /** `4 Dec`: the next one. */
  | { said: 'day-of-month'; month: number; day: number }
  /** `Friday`: the next one. 1 is Monday, 7 is Sunday. */
  | { said: 'weekday'; weekday: number }
  /** `today` is 0, `in 2 weeks` is 14. */
  | { said: 'days-ahead'; days: number }

/**
 * Why a date was not understood: nothing there; no date; no such day or month; hours, months or years, which are no count
 * of days; `next Friday`, which means two days to two people; a day gone by.
 */
export type DateFault = 'empty' | 'not-a-date' | 'day' | 'month' | 'unit' | 'next' | 'past'

export type DateReading = Reading<DateSaid, DateFault> | TwoWays

/**
 * Reads a date: `2026-12-04`, `4.12.2026`, `4.12.`, `4 Dec`, `Dec 4, 2026`, `Friday`, `today`, `tomorrow`, `in 3 days`, `in 2
 * weeks`. Which of the two numbers in `4/12` is the month differs from country to country: both readings are given.
 */
export function readDateSaid(text: string): DateReading {
  const typed = text.trim()
  const form = tidy(text)
    .toLowerCase()
    .replace(/^on (?=\S)/, '')
  if (form === '') return notUnderstood('empty', '', '4 Dec')
  return readForm(form) ?? dayGoneBy(form, typed) ?? notUnderstood('not-a-date', typed, nearestOf(form))
}

function readForm(form: string): DateReading | null {
  return readFigureDate(form) ?? namedDay(form) ?? namedMonth(form) ?? daysAhead(form)
}

function namedDay(form: string): DateReading | null {
  if (form === 'today') return understood({ said: 'days-ahead', days: 0 })
  if (form === 'tomorrow') return understood({ said: 'days-ahead', days: 1 })
  const [, before, word = ''] = /^(?:(this|next) )?([a-z]+\.?)$/.exec(form) ?? []
  const weekday = weekdayNamed(word)
  if (weekday === null) return null
  return before === 'next' ? notUnderstood('next', form, word) : understood({ said: 'weekday', weekday })
}

/** `4 Dec`, `4th of December 2026`, `4. Dec`, `Dec 4`, `December 4th, 2026`. */
function namedMonth(form: string): DateReading | null {
  const dayFirst = /^(\d{1,2})(?:st|nd|rd|th|\.)? ?(?:of )?([a-z]+\.?)(?:,? ?(\d{4}))?$/.exec(form)
  const monthFirst = /^([a-z]+\.?) ?(\d{1,2})(?:st|nd|rd|th)?(?:,? (\d{4}))?$/.exec(form)
  const [day, word = '', year] = dayFirst?.slice(1) ?? [monthFirst?.[2], monthFirst?.[1], monthFirst?.[3]]
  const month = monthNamed(word)
  return month === null ? null : dayOfMonthSaid({ form, day: Number(day), month, year })
}

const daysIn: ReadonlyMap<string, number> = new Map(Object.entries({ day: 1, d: 1, week: 7, wk: 7, w: 7 }))
// No count of days: what is nearest is asked.
const aboutDaysIn: ReadonlyMap<string, number> = new Map(
  Object.entries({ hour: 1 / 24, h: 1 / 24, hr: 1 / 24, month: 30, year: 365 }),
)

function daysAhead(form: string): DateReading | null {
  const match = /^(?:in )?(\d{1,3}|[a-z]+) ?([a-z]+?)s?$/.exec(form)
  if (!match) return null
  const [, number = '', unit = ''] = match
  const count = /^an?$/.test(number) ? 1 : readWhole(number)
  const days = daysIn.get(unit)
  if (count === undefined) return null
  if (days !== undefined) return understood({ said: 'days-ahead', days: count * days })
  const about = aboutDaysIn.get(unit)
  return about === undefined ? null : notUnderstood('unit', form, inDays(Math.ceil(count * about)))
}

function inDays(days: number): string {
  return days === 1 ? 'tomorrow' : `in ${days} days`
}

function dayGoneBy(form: string, typed: string): DateReading | null {
  const isPast = /^yesterday$|\bago$|^last \S/.test(form)
  return isPast ? notUnderstood('past', typed, 'today') : null
}

/** A date among other words, or the day whose name begins like the word; else a form of a date. */
function nearestOf(form: string): string {
  if (form === 'next week') return 'in 1 week'
  if (form.startsWith('tom')) return 'tomorrow'
  if (form.startsWith('tod')) return 'today'
  const words = form.split(' ')
  const inside = partsOf(words.slice(0, 8)).find((part) => readForm(part)?.understood)
  if (inside !== undefined) return inside
  const name = words.length === 1 ? dayNameLike(form) : null
  if (name === null) return '4 Dec'
  return weekdayNamed(name) === null ? `4 ${name.slice(0, 3)}` : name
}

/** What some of the words say that follow one another, the longest first. */
function partsOf(words: readonly string[]): string[] {
  const lengths = words.map((_, index) => words.length - index)
  return lengths.flatMap((length) =>
    words.slice(0, words.length - length + 1).map((_, first) => words.slice(first, first + length).join(' ')),
  )
}
