import { describe, expect, test } from 'vitest'
import { daysBetween } from '../../src/trade/calendar/days-between.ts'
import { daysLate, dayText, dueText } from '../../src/words/days.ts'

const today = '2028-03-02'

describe('a day', () => {
  test.each([
    ['2028-03-02', '2 Mar'],
    ['2028-12-31', '31 Dec'],
    ['2029-01-01', '1 Jan 2029'],
    ['2027-12-31', '31 Dec 2027'],
  ])('%s is %s on 2 March 2028', (day, text) => {
    expect(dayText(day, today)).toBe(text)
  })

  test('what is no day stays as it is', () => {
    expect(dayText('soon', today)).toBe('soon')
  })
})

test.each([
  ['2028-03-03', 'due 3 Mar'],
  ['2028-03-02', 'due 2 Mar'],
  ['2028-03-01', 'due 1 Mar, 1 day late'],
  // 2028 is a leap year.
  ['2028-02-28', 'due 28 Feb, 3 days late'],
  ['2027-12-31', 'due 31 Dec 2027, 62 days late'],
])('%s: %s', (day, text) => {
  expect(dueText(day, today)).toBe(text)
})

test('days are counted as the calendar of the trade counts them, over summer time and leap years', () => {
  const days = ['2027-03-27', '2027-03-29', '2027-10-30', '2028-02-29', '2028-03-01', '2031-07-15']
  for (const from of days) {
    for (const to of days) expect(daysLate(from, to)).toBe(Math.max(0, daysBetween(from, to)))
  }
})
