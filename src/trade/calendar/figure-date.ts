import { notUnderstood, understood } from '../reading.ts'
import { twoWays } from '../two-ways.ts'
import { isoDate, lastDayOf } from './calendar-day.ts'
import type { DateReading } from './date-said.ts'
import { monthName } from './day-names.ts'

interface Figures {
  form: string
  day: number
  month: number
  /** As typed, in two or four digits; undefined where none is said. */
  year: string | undefined
}

/**
 * Reads a date in figures. A year of four digits may stand first; between points the day stands before the month. Null
 * where the text is no three or two numbers with the same sign between them.
 */
export function readFigureDate(form: string): DateReading | null {
  const plain = form.replace(/ ?([./-]) ?/g, '$1')
  const match = /^(\d{1,4})([./-])(\d{1,2})(?:\2(\d{4}|\d{1,2})?)?$/.exec(plain)
  if (!match) return null
  const [, first = '', sign, second = '', third] = match
  if (first.length === 4 && third !== undefined && third.length < 3) {
    return dayOfMonthSaid({ form, day: Number(third), month: Number(second), year: first })
  }
  if (first.length > 2 || third?.length === 1 || (sign !== '.' && plain.endsWith(sign ?? ''))) return null
  const dayFirst = { form, day: Number(first), month: Number(second), year: third }
  if (sign === '.') return dayOfMonthSaid(dayFirst)
  return oneOf(dayFirst, [
    { ...dayFirst, day: dayFirst.month, month: dayFirst.day },
    ...(third?.length === 2 ? [{ form, day: Number(third), month: Number(second), year: first }] : []),
  ])
}

/** A day and a month, and a year if one was said; day 32 and month 13 are not understood. */
export function dayOfMonthSaid({ form, day, month, year }: Figures): DateReading {
  const swapped = { form, day: month, month: day, year }
  const lastOfMonth = month >= 1 && month <= 12 ? `${lastDayOf(2000, month)} ${monthName(month)}` : '4 Dec'
  const nearest = isInRange(swapped) ? typedAs(swapped) : lastOfMonth
  if (month < 1 || month > 12) return notUnderstood('month', form, nearest)
  if (day < 1 || day > 31) return notUnderstood('day', form, nearest)
  if (year === undefined) return understood({ said: 'day-of-month', month, day })
  return understood({ said: 'date', year: fullYear(year), month, day })
}

/** Between slashes and hyphens countries differ: where more than one reading is a date, none is taken. */
function oneOf(dayFirst: Figures, others: readonly Figures[]): DateReading {
  const possible = [dayFirst, ...others].filter(isInRange)
  const [one, other] = [...new Set(possible.map(typedAs))]
  if (one !== undefined && other !== undefined) return twoWays(dayFirst.form, one, other)
  return dayOfMonthSaid(possible[0] ?? dayFirst)
}

function isInRange({ day, month }: Figures): boolean {
  return day >= 1 && day <= 31 && month >= 1 && month <= 12
}

/** A date as it is understood by everybody. */
function typedAs({ day, month, year }: Figures): string {
  return year === undefined ? `${day} ${monthName(month)}` : isoDate({ year: fullYear(year), month, day })
}

/** Two digits are a year of this century. */
function fullYear(year: string): number {
  return year.length === 2 ? 2000 + Number(year) : Number(year)
}
