import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { durationText, readDuration } from '../../../src/trade/calendar/duration-said.ts'

// 1 d = 24 h = 1440 min: SI brochure, 9th edition, table 8 (units accepted for use with the SI)
describe('durations as they are typed', () => {
  test.each([
    ['5 min', 5],
    ['5min', 5],
    ['5 m', 5],
    ['10 Minutes', 10],
    ['24 h', 1440],
    ['24h', 1440],
    ['1 hour', 60],
    ['3 hrs', 180],
    ['1.5 h', 90],
    ['1,5 h', 90],
    ['1½ h', 90],
    ['1 1/2 h', 90],
    ['1/4 h', 15],
    ['1.33 h', 80],
    ['1 h 30 min', 90],
    ['1h30', 90],
    ['1 h 30', 90],
    ['1 h, 30 min', 90],
    ['1 hour and 30 minutes', 90],
    ['1:30', 90],
    ['1:05 h', 65],
    ['30 min 1 h', 90],
    ['an hour', 60],
    ['half an hour', 30],
    ['a day', 1440],
    ['two days', 2880],
    ['2 days', 2880],
    ['2 d 12 h', 3600],
    ['1 week', 10_080],
    ['366 days', 527_040],
  ])('%j are %i min', (typed, minutes) => {
    expect(readDuration(typed)).toEqual({ understood: true, value: { minutes, typed } })
  })

  test('the words stay as they were typed, but for the spaces around them', () => {
    expect(readDuration('  1½ Hours ')).toMatchObject({ value: { typed: '1½ Hours' } })
  })
})

describe('what has two readings', () => {
  test.each([
    ['24', '24 min', '24 h'],
    ['1.5', '1.5 min', '1.5 h'],
    ['24-48 h', '24 h', '48 h'],
    ['24 to 48 h', '24 h', '48 h'],
    ['2..3 days', '2 days', '3 days'],
  ])('%j: %j and %j', (typed, one, other) => {
    const reading = { understood: false, code: 'two-ways', part: typed, nearest: one, ways: [one, other] }
    expect(readDuration(typed)).toEqual(reading)
    for (const way of [one, other]) expect(readDuration(way).understood).toBe(true)
  })
})

describe('what is no duration', () => {
  test.each([
    ['', 'no-number', '', null],
    ['overnight', 'no-number', 'overnight', null],
    ['until dry', 'no-number', 'until dry', null],
    ['h', 'no-number', 'h', null],
    ['24 hous', 'unit', '24 hous', '24 h'],
    ['10 mn', 'unit', '10 mn', '10 min'],
    ['1 month', 'unit', '1 month', null],
    ['90 s', 'unit', '90 s', null],
    ['2 days 4', 'unit', '4', null],
    ['1 h 2 h', 'twice', '2 h', '1 h'],
    ['0 h', 'not-positive', '0 h', null],
    ['0.2 min', 'not-positive', '0.2 min', null],
    ['-5 min', 'not-positive', '-5 min', '5 min'],
    ['367 days', 'too-long', '367 days', null],
    ['about 5 min', 'words', 'about 5 min', '5 min'],
    ['24 h at 20 °C', 'words', '24 h at 20 °C', '24 h'],
    ['1.2.3 h', 'words', '1.2.3 h', null],
    ['1:60', 'unit', '1', null],
  ])('%j: %s', (typed, code, part, nearest) => {
    expect(readDuration(typed)).toEqual({ understood: false, code, part, nearest })
  })

  test('whatever is typed, a nearest form is understood', () => {
    const words = fc.constantFrom(
      '1',
      '30',
      '1.5',
      'h',
      'min',
      'days',
      '-',
      'to',
      'a',
      'half',
      '½',
      'x',
      '1:30',
    )
    const texts = fc.oneof(
      fc.string({ maxLength: 20 }),
      fc.array(words, { maxLength: 6 }).map((some) => some.join(' ')),
    )
    fc.assert(
      fc.property(texts, (text) => {
        const reading = readDuration(text)
        if (reading.understood || reading.nearest === null) return
        expect(readDuration(reading.nearest).understood).toBe(true)
        if (reading.code === 'two-ways') expect(readDuration(reading.ways[1]).understood).toBe(true)
      }),
      { seed: 20261130, numRuns: 2000 },
    )
  })
})

describe('minutes as text', () => {
  test.each([
    [0, '0 min'],
    [1, '1 min'],
    [45, '45 min'],
    [60, '1 h'],
    [90, '1 h 30 min'],
    [1440, '24 h'],
    [1500, '25 h'],
    [2879, '47 h 59 min'],
    [2880, '2 days'],
    [3060, '2 days 3 h'],
    [3061, '2 days 3 h 1 min'],
    [2885, '2 days 5 min'],
  ])('%i min is %j', (minutes, text) => {
    expect(durationText(minutes)).toBe(text)
  })

  test('the text is read as the same minutes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 527_040 }), (minutes) => {
        expect(readDuration(durationText(minutes))).toMatchObject({ value: { minutes } })
      }),
      { seed: 20261130, numRuns: 1000 },
    )
  })
})
