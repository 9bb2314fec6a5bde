import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type CalendarDay,
  dayOfIsoDate,
  isoDate,
  lastDayOf,
} from '../../../src/trade/calendar/calendar-day.ts'
import { dayOfNumber, julianDayNumber, weekdayOfNumber } from '../../../src/trade/calendar/day-number.ts'
import { daysBetween } from '../../../src/trade/calendar/days-between.ts'

const day = (date: string): CalendarDay => {
  const read = dayOfIsoDate(date)
  if (read === null) throw new Error(`${date} is no date`)
  return read
}

describe('published day numbers', () => {
  test.each([
    // J2000.0 is noon of 1 January 2000, JD 2451545.0: IAU 1994 resolution C7
    ['2000-01-01', 2451545],
    // The modified Julian date counts from 0 h of 17 November 1858, JD 2400000.5: IAU 1997 resolution B1
    ['1858-11-17', 2400001],
    // 0 h of 1 January 1970 is JD 2440587.5, MJD 40587: the offset between MJD and POSIX time
    ['1970-01-01', 2440588],
    // Meeus, Astronomical Algorithms, ch. 7: 1957 October 4.81 is JD 2436116.31
    ['1957-10-04', 2436116],
    // The first day of the Gregorian calendar, JD 2299160.5 at 0 h: Meeus, ch. 7
    ['1582-10-15', 2299161],
  ])('%s is %i at noon', (date, number) => {
    expect(julianDayNumber(day(date))).toBe(number)
    expect(isoDate(dayOfNumber(number))).toBe(date)
  })

  test.each([
    // ISO 8601:2000, 5.2.3.1: 12 April 1985 is 1985-W15-5
    ['1985-04-12', 5],
    // RFC 5322, appendix A: "Fri, 21 Nov 1997", "Tue, 1 Jul 2003", "Mon, 24 Nov 1997", "Thu, 13 Feb 1969"
    ['1997-11-21', 5],
    ['2003-07-01', 2],
    ['1997-11-24', 1],
    ['1969-02-13', 4],
    // RFC 9110, 5.6.7: "Sun, 06 Nov 1994"
    ['1994-11-06', 7],
  ])('the weekday of %s is %i', (date, weekday) => {
    expect(weekdayOfNumber(julianDayNumber(day(date)))).toBe(weekday)
  })

  test('the ordinal day of 12 April 1985 is 102 (ISO 8601:2000, 5.2.2.1)', () => {
    expect(daysBetween('1984-12-31', '1985-04-12')).toBe(102)
  })
})

describe('days between two dates', () => {
  test.each([
    ['2026-12-04', '2026-12-07', 3],
    ['2026-12-04', '2026-12-04', 0],
    ['2026-12-04', '2026-11-30', -4],
    ['2027-02-28', '2027-03-01', 1],
    ['2028-02-28', '2028-03-01', 2],
    // 1900 was no leap year, 2000 was one: ISO 8601, "leap year"
    ['1900-01-01', '1901-01-01', 365],
    ['2000-01-01', '2001-01-01', 366],
    // 400 years have 146097 days, which are whole weeks
    ['1600-01-01', '2000-01-01', 146_097],
    ['0000-01-01', '0400-01-01', 146_097],
    // Days on which clocks are changed are days like others
    ['2026-03-28', '2026-03-30', 2],
    ['2026-10-24', '2026-10-26', 2],
  ])('from %s to %s are %i', (from, to, days) => {
    expect(daysBetween(from, to)).toBe(days)
  })

  test.each(['', '2026-11-31', '2027-02-29', '2026-13-01', '2026-00-10', '2026-1-1', '2026-12-04T00:00'])(
    '%j is no date',
    (text) => {
      expect(dayOfIsoDate(text)).toBeNull()
      expect(() => daysBetween('2026-12-04', text)).toThrow(`"${text}" is no date`)
      expect(() => daysBetween(text, '2026-12-04')).toThrow(`"${text}" is no date`)
    },
  )

  const dates = fc.date({
    min: new Date('0000-01-01T00:00:00Z'),
    max: new Date('9999-12-31T00:00:00Z'),
    noInvalidDate: true,
  })

  test('they are those that the engine counts in UTC', () => {
    fc.assert(
      fc.property(dates, dates, (one, other) => {
        const [from, to] = [one, other].map((date) => date.toISOString().slice(0, 10)) as [string, string]
        const milliseconds = Date.parse(to) - Date.parse(from)
        expect(daysBetween(from, to)).toBe(milliseconds / 86_400_000)
      }),
      { seed: 20261130, numRuns: 1000 },
    )
  })

  test('every number leads back to its day, and the weekday is that of the engine', () => {
    fc.assert(
      fc.property(dates, (date) => {
        const named = day(date.toISOString().slice(0, 10))
        const number = julianDayNumber(named)
        expect(dayOfNumber(number)).toEqual(named)
        expect(weekdayOfNumber(number) % 7).toBe(date.getUTCDay())
      }),
      { seed: 20261130, numRuns: 1000 },
    )
  })

  test('every month is as long as in the engine, over a whole cycle of 400 years', () => {
    for (let year = 1800; year < 2200; year++) {
      for (let month = 1; month <= 12; month++) {
        expect(lastDayOf(year, month)).toBe(new Date(Date.UTC(year, month, 0)).getUTCDate())
      }
    }
  })
})
