import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readDateSaid } from '../../../src/trade/calendar/date-said.ts'
import { daysBetween } from '../../../src/trade/calendar/days-between.ts'
import { resolveDate } from '../../../src/trade/calendar/resolve-date.ts'

/** The date of what is typed on a day. */
function resolved(typed: string, today: string) {
  const reading = readDateSaid(typed)
  if (!reading.understood) throw new Error(`${typed} is not understood`)
  return resolveDate(reading.value, today)
}

describe('the date that is meant', () => {
  // 1985-04-12 was a Friday: ISO 8601:2000, 5.2.3.1
  test.each([
    ['2026-12-04', '2026-11-30', '2026-12-04'],
    ['2026-11-01', '2026-11-30', '2026-11-01'],
    ['29.2.2028', '2026-11-30', '2028-02-29'],
    ['4 Dec', '2026-11-30', '2026-12-04'],
    ['4 Dec', '2026-12-04', '2026-12-04'],
    ['4 Dec', '2026-12-05', '2027-12-04'],
    ['1 Jan', '2026-12-31', '2027-01-01'],
    ['29 Feb', '2026-11-30', '2028-02-29'],
    ['29 Feb', '2028-02-29', '2028-02-29'],
    ['29 Feb', '2096-03-01', '2104-02-29'],
    ['Friday', '1985-04-11', '1985-04-12'],
    ['Friday', '1985-04-12', '1985-04-19'],
    ['Friday', '1985-04-13', '1985-04-19'],
    ['Monday', '1985-04-12', '1985-04-15'],
    ['Sunday', '1985-04-12', '1985-04-14'],
    ['today', '2026-11-30', '2026-11-30'],
    ['tomorrow', '2026-11-30', '2026-12-01'],
    ['tomorrow', '2026-12-31', '2027-01-01'],
    ['in 3 days', '2028-02-27', '2028-03-01'],
    ['in 2 weeks', '2026-12-20', '2027-01-03'],
  ])('%s, said on %s, is %s', (typed, today, date) => {
    expect(resolved(typed, today)).toEqual({ resolved: true, date })
  })

  test.each([
    ['31 Nov', { day: 31, month: 11, year: null, lastDay: 30 }],
    ['30 Feb', { day: 30, month: 2, year: null, lastDay: 29 }],
    ['29.2.2027', { day: 29, month: 2, year: 2027, lastDay: 28 }],
    ['2100-02-29', { day: 29, month: 2, year: 2100, lastDay: 28 }],
    ['2026-04-31', { day: 31, month: 4, year: 2026, lastDay: 30 }],
  ])('%s is no day of the calendar', (typed, fault) => {
    expect(resolved(typed, '2026-11-30')).toEqual({ resolved: false, ...fault })
  })

  test('a today that is none is an error of the program', () => {
    expect(() => resolved('today', '2026-11-31')).toThrow('"2026-11-31" is no date')
  })

  const todays = fc
    .date({ min: new Date('1900-01-01Z'), max: new Date('2999-01-01Z'), noInvalidDate: true })
    .map((date) => date.toISOString().slice(0, 10))

  test('a weekday comes within the next seven days, and is the one that was said', () => {
    fc.assert(
      fc.property(todays, fc.integer({ min: 1, max: 7 }), (today, weekday) => {
        const date = resolveDate({ said: 'weekday', weekday }, today)
        if (!date.resolved) throw new Error('every week has all of its days')
        const ahead = daysBetween(today, date.date)
        expect(ahead).toBeGreaterThanOrEqual(1)
        expect(ahead).toBeLessThanOrEqual(7)
        expect(new Date(`${date.date}T12:00Z`).getUTCDay()).toBe(weekday % 7)
      }),
      { seed: 20261130 },
    )
  })

  test('a day without a year is the first of its name that the engine finds, day by day', () => {
    fc.assert(
      fc.property(
        todays,
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 28 }),
        (today, month, day) => {
          const date = resolveDate({ said: 'day-of-month', month, day }, today)
          let found = new Date(`${today}T00:00Z`)
          while (found.getUTCMonth() + 1 !== month || found.getUTCDate() !== day) {
            found = new Date(found.getTime() + 86_400_000)
          }
          expect(date).toEqual({ resolved: true, date: found.toISOString().slice(0, 10) })
        },
      ),
      { seed: 20261130 },
    )
  })
})
