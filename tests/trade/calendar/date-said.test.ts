import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readDateSaid } from '../../../src/trade/calendar/date-said.ts'

describe('dates as they are typed', () => {
  const date = { said: 'date', year: 2026, month: 12, day: 4 }
  const dayOfMonth = { said: 'day-of-month', month: 12, day: 4 }
  const friday = { said: 'weekday', weekday: 5 }
  const ahead = (days: number) => ({ said: 'days-ahead', days })

  test.each([
    ['2026-12-04', date],
    [' 2026-12-4 ', date],
    ['2026/12/04', date],
    ['2026.12.04', date],
    ['4.12.2026', date],
    ['04.12.26', date],
    ['4. 12. 2026', date],
    ['4 Dec 2026', date],
    ['4. December 2026', date],
    ['4th of December, 2026', date],
    ['Dec 4, 2026', date],
    ['december 4 2026', date],
    ['4.12.', dayOfMonth],
    ['4.12', dayOfMonth],
    ['4 Dec', dayOfMonth],
    ['4 dec.', dayOfMonth],
    ['4dec', dayOfMonth],
    ['Dec 4', dayOfMonth],
    ['Dec. 4th', dayOfMonth],
    ['on 4 Dec', dayOfMonth],
    ['31.11.', { said: 'day-of-month', month: 11, day: 31 }],
    ['1 Sept', { said: 'day-of-month', month: 9, day: 1 }],
    ['1 may', { said: 'day-of-month', month: 5, day: 1 }],
    ['Friday', friday],
    ['fri', friday],
    ['FRI.', friday],
    ['on Friday', friday],
    ['this friday', friday],
    ['thurs', { said: 'weekday', weekday: 4 }],
    ['Mon', { said: 'weekday', weekday: 1 }],
    ['sunday', { said: 'weekday', weekday: 7 }],
    ['today', ahead(0)],
    ['Tomorrow', ahead(1)],
    ['in 3 days', ahead(3)],
    ['3 days', ahead(3)],
    ['3d', ahead(3)],
    ['in a day', ahead(1)],
    ['in 2 weeks', ahead(14)],
    ['in two weeks', ahead(14)],
    ['in a week', ahead(7)],
    ['2 wks', ahead(14)],
  ])('%j', (typed, value) => {
    expect(readDateSaid(typed)).toEqual({ understood: true, value })
  })
})

describe('which number is the month', () => {
  test.each([
    ['12/04/2026', '2026-04-12', '2026-12-04'],
    ['4/12/2026', '2026-12-04', '2026-04-12'],
    ['4-12-2026', '2026-12-04', '2026-04-12'],
    ['4/12', '4 Dec', '12 Apr'],
    ['4 / 12', '4 Dec', '12 Apr'],
    ['12/04/26', '2026-04-12', '2026-12-04'],
    ['26-12-04', '2004-12-26', '2026-12-04'],
  ])('%j is read in two ways: %s and %s', (typed, one, other) => {
    expect(readDateSaid(typed)).toMatchObject({
      understood: false,
      code: 'two-ways',
      nearest: one,
      ways: [one, other],
    })
    for (const way of [one, other]) expect(readDateSaid(way).understood).toBe(true)
  })

  test.each([
    ['25/12/2026', { said: 'date', year: 2026, month: 12, day: 25 }],
    ['12/25/2026', { said: 'date', year: 2026, month: 12, day: 25 }],
    ['25/12', { said: 'day-of-month', month: 12, day: 25 }],
    ['4/4', { said: 'day-of-month', month: 4, day: 4 }],
  ])('%j has one reading only', (typed, value) => {
    expect(readDateSaid(typed)).toEqual({ understood: true, value })
  })
})

describe('what is no date', () => {
  test.each([
    ['', 'empty', '', '4 Dec'],
    ['4.13.2026', 'month', '4.13.2026', '2026-04-13'],
    ['4.13.', 'month', '4.13.', '13 Apr'],
    ['13/13', 'month', '13/13', '4 Dec'],
    ['2026-13-04', 'month', '2026-13-04', '2026-04-13'],
    ['32 Dec', 'day', '32 dec', '31 Dec'],
    ['0.12.', 'day', '0.12.', '31 Dec'],
    ['30.0.', 'month', '30.0.', '4 Dec'],
    ['next Friday', 'next', 'next friday', 'friday'],
    ['in 36 hours', 'unit', 'in 36 hours', 'in 2 days'],
    ['12 h', 'unit', '12 h', 'tomorrow'],
    ['in 2 months', 'unit', 'in 2 months', 'in 60 days'],
    ['yesterday', 'past', 'yesterday', 'today'],
    ['3 days ago', 'past', '3 days ago', 'today'],
    ['last Friday', 'past', 'last Friday', 'today'],
    ['next week', 'not-a-date', 'next week', 'in 1 week'],
    ['tomorow', 'not-a-date', 'tomorow', 'tomorrow'],
    ['Wensday', 'not-a-date', 'Wensday', '4 Dec'],
    ['Wednsday', 'not-a-date', 'Wednsday', 'Wednesday'],
    ['Decmber', 'not-a-date', 'Decmber', '4 Dec'],
    ['Fri 4 Dec', 'not-a-date', 'Fri 4 Dec', '4 dec'],
    ['by Friday', 'not-a-date', 'by Friday', 'friday'],
    ['Friday at noon', 'not-a-date', 'Friday at noon', 'friday'],
    ['soon', 'not-a-date', 'soon', '4 Dec'],
    ['in 2 constructor', 'not-a-date', 'in 2 constructor', '4 Dec'],
    ['4', 'not-a-date', '4', '4 Dec'],
    ['20261204', 'not-a-date', '20261204', '4 Dec'],
    ['4.12.2', 'not-a-date', '4.12.2', '4 Dec'],
    ['4/12/', 'not-a-date', '4/12/', '4 Dec'],
    ['4.12-2026', 'not-a-date', '4.12-2026', '4 Dec'],
    ['2026-12', 'not-a-date', '2026-12', '4 Dec'],
    ['fr', 'not-a-date', 'fr', '4 Dec'],
  ])('%j: %s', (typed, code, part, nearest) => {
    expect(readDateSaid(typed)).toEqual({ understood: false, code, part, nearest })
  })

  test('whatever is typed, the nearest form is understood', () => {
    const words = fc.constantFrom(
      'in',
      'next',
      'on',
      'friday',
      '3',
      '31',
      'dec',
      'days',
      'week',
      '4.12.',
      '4/12',
      'x',
    )
    const texts = fc.oneof(
      fc.string({ maxLength: 20 }),
      fc.array(words, { maxLength: 6 }).map((some) => some.join(' ')),
      fc.stringMatching(/^[0-9]{1,4}[./-][0-9]{1,2}[./-]?[0-9]{0,4}$/),
    )
    fc.assert(
      fc.property(texts, (text) => {
        const reading = readDateSaid(text)
        if (reading.understood) return
        expect(readDateSaid(reading.nearest).understood).toBe(true)
        if (reading.code === 'two-ways') expect(readDateSaid(reading.ways[1]).understood).toBe(true)
      }),
      { seed: 20261130, numRuns: 2000 },
    )
  })
})
