import { type CalendarDay, lastDayOf } from './calendar-day.ts'

// The Julian day number of 1 March of the year 0. Years are counted from March, so that a leap day is the last of its year.
const marchOfYearZero = 1721120

/** The Julian day number of a day: days counted on from noon of 24 November of the year -4713 (Gregorian). */
export function julianDayNumber({ year, month, day }: CalendarDay): number {
  const years = month > 2 ? year : year - 1
  const months = month > 2 ? month - 3 : month + 9
  const leapDays = Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400)
  // From March on, five months have 153 days: 31, 30, 31, 30, 31.
  const daysOfMonths = Math.floor((153 * months + 2) / 5)
  return marchOfYearZero + 365 * years + leapDays + daysOfMonths + day - 1
}

/** The day that a Julian day number stands for. */
export function dayOfNumber(number: number): CalendarDay {
  // 400 years have 146097 days. The guess may be a year off.
  let year = Math.floor(((number - marchOfYearZero) * 400) / 146097)
  while (julianDayNumber({ year: year + 1, month: 1, day: 1 }) <= number) year += 1
  while (julianDayNumber({ year, month: 1, day: 1 }) > number) year -= 1
  let month = 1
  let day = number - julianDayNumber({ year, month: 1, day: 1 }) + 1
  while (day > lastDayOf(year, month)) {
    day -= lastDayOf(year, month)
    month += 1
  }
  return { year, month, day }
}

/** The day of the week of a Julian day number, as ISO 8601 counts: 1 is Monday, 7 is Sunday. */
export function weekdayOfNumber(number: number): number {
  // Day 0 was a Monday.
  return (((number % 7) + 7) % 7) + 1
}
