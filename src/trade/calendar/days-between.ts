import { dayOfIsoDate } from './calendar-day.ts'
import { julianDayNumber } from './day-number.ts'

/**
 * Whole days from one date to another, both as `2026-12-04`; below zero where the second is the earlier one.
 * @throws RangeError where one is no date
 */
export function daysBetween(from: string, to: string): number {
  return numberOf(to) - numberOf(from)
}

function numberOf(date: string): number {
  const day = dayOfIsoDate(date)
  if (day === null) throw new RangeError(`"${date}" is no date of the form YYYY-MM-DD`)
  return julianDayNumber(day)
}
