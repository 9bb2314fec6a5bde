import { type CalendarDay, dayOfIsoDate, isDay, isoDate, lastDayOf } from './calendar-day.ts'
import type { DateSaid } from './date-said.ts'
import { dayOfNumber, julianDayNumber, weekdayOfNumber } from './day-number.ts'

export type ResolvedDate =
  /** `date` as `2026-12-04`. */
  | { resolved: true; date: string }
  /** The month has no such day. `year` is null where none was said, and `lastDay` then the last that the month ever has. */
  | { resolved: false; day: number; month: number; year: number | null; lastDay: number }

// From 29 February 1896 to that of 1904 no year was a leap year.
const longestWaitInYears = 8

/**
 * The date that was said, for somebody who says it today. A weekday is the next such day, never today; a day and a month
 * without a year is the next such date, and may be today.
 * @param today as `2026-11-30`, where the person is
 * @throws RangeError where `today` is no such date
 */
export function resolveDate(said: DateSaid, today: string): ResolvedDate {
  const from = dayOfIsoDate(today)
  if (from === null) throw new RangeError(`"${today}" is no date of the form YYYY-MM-DD`)
  const now = julianDayNumber(from)
  switch (said.said) {
    case 'date':
      return isDay(said) ? onDay(said) : noSuchDay(said, said.year)
    case 'day-of-month':
      return nextDayOfMonth(said, from)
    case 'weekday': {
      const ahead = (said.weekday - weekdayOfNumber(now) + 7) % 7
      return onDay(dayOfNumber(now + (ahead === 0 ? 7 : ahead)))
    }
    case 'days-ahead':
      return onDay(dayOfNumber(now + said.days))
  }
}

function nextDayOfMonth({ month, day }: { month: number; day: number }, from: CalendarDay): ResolvedDate {
  const now = julianDayNumber(from)
  for (let year = from.year; year <= from.year + longestWaitInYears; year++) {
    const named = { year, month, day }
    if (isDay(named) && julianDayNumber(named) >= now) return onDay(named)
  }
  return noSuchDay({ month, day }, null)
}

function onDay(day: CalendarDay): ResolvedDate {
  return { resolved: true, date: isoDate(day) }
}

function noSuchDay({ month, day }: { month: number; day: number }, year: number | null): ResolvedDate {
  // Of the leap year 2000, where none was said: 29 February is a day then.
  return { resolved: false, day, month, year, lastDay: lastDayOf(year ?? 2000, month) }
}
