/** A day of the Gregorian calendar, which is taken to hold for all years 0 to 9999 (ISO 8601, proleptic). */
export interface CalendarDay {
  year: number
  /** 1 to 12. */
  month: number
  /** From 1. */
  day: number
}

const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** How many days a month has: the last day of it. */
export function lastDayOf(year: number, month: number): number {
  const isLeapYear = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
  return month === 2 && isLeapYear ? 29 : (monthLengths[month - 1] ?? 0)
}

/** Whether the calendar has this day. */
export function isDay({ year, month, day }: CalendarDay): boolean {
  return year >= 0 && year <= 9999 && month >= 1 && month <= 12 && day >= 1 && day <= lastDayOf(year, month)
}

/** A day as ISO 8601 writes it: `2026-12-04`. */
export function isoDate({ year, month, day }: CalendarDay): string {
  return [String(year).padStart(4, '0'), pad(month), pad(day)].join('-')
}

/** The day that `2026-12-04` names; null for any other text, and for a day that the calendar does not have. */
export function dayOfIsoDate(text: string): CalendarDay | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text)
  if (!match) return null
  const named = { year: Number(match[1]), month: Number(match[2]), day: Number(match[3]) }
  return isDay(named) ? named : null
}

function pad(number: number): string {
  return String(number).padStart(2, '0')
}
