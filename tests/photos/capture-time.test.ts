import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  localTime,
  readTaken,
  secondsOf,
  type Taken,
  takenText,
  timeStamp,
} from '../../src/photos/capture-time.ts'

const at = (DateTimeOriginal: unknown, SubSecTimeOriginal?: unknown, OffsetTimeOriginal?: unknown) =>
  readTaken({ DateTimeOriginal, SubSecTimeOriginal, OffsetTimeOriginal })

describe('a capture time', () => {
  // CIPA DC-008 Exif 2.32, 4.6.5.2 and 4.6.5.3: the format of date and time, and of what is unknown.
  test.each([
    [['2026:11:25 10:11:12'], '2026-11-25T10:11:12'],
    [['2026:11:25 10:11:12', '345', '+02:00'], '2026-11-25T10:11:12.345+02:00'],
    [['2026:11:25 10:11:12', '05 ', '-09:30'], '2026-11-25T10:11:12.05-09:30'],
    [['2024:02:29 23:59:59', '   ', '   :  '], '2024-02-29T23:59:59'],
    [['2026:11:25 10:11:12', '1;rm', '+25:00'], '2026-11-25T10:11:12'],
    [['2026:11:25 10:11:12', 345, null], '2026-11-25T10:11:12'],
  ] as const)('%j', ([date, fraction, offset]: readonly unknown[], text) => {
    expect(takenText(at(date, fraction, offset) as Taken)).toBe(text)
  })

  test.each([
    undefined,
    '',
    '    :  :     :  :  ',
    '0000:00:00 00:00:00',
    '2026:02:29 10:11:12',
    '2026:13:01 10:11:12',
    '2026:11:25 24:00:00',
    '2026:11:25 10:60:12',
    '2026-11-25 10:11:12',
    '2026:11:25T10:11:12',
    '2026:11:25 10:11',
    '\x1b]0;2026:11:25 10:11:12\x07',
    '2026:11:25 10:11:12\n2026:11:25 10:11:12',
    new Date(0),
    20261125,
  ])('none in %j', (date) => {
    expect(at(date)).toBeNull()
  })
})

test('every time that there is goes in and comes out the same, and is read as that moment', () => {
  const times = fc.date({ min: new Date('1900-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
  fc.assert(
    fc.property(times, fc.integer({ min: -14 * 60, max: 14 * 60 + 59 }), (date, minutes) => {
      const local = date.toISOString().slice(0, 19)
      const two = (value: number) => String(value).padStart(2, '0')
      const size = Math.abs(minutes)
      const offset = `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`
      const taken = at(local.replaceAll('-', ':').replace('T', ' '), '', offset) as Taken
      expect(takenText(taken)).toBe(`${local}${offset}`)
      // The platform's own reading of ISO 8601.
      expect(secondsOf(taken, true)).toBe(Date.parse(`${local}${offset}`) / 1000)
      expect(secondsOf(taken, false)).toBe(Date.parse(`${local}Z`) / 1000)
    }),
  )
})

test('as it stands in the name of a file', () => {
  expect(timeStamp('2026-11-25T10:11:12')).toBe('20261125-101112')
  expect(localTime(new Date(2026, 10, 5, 9, 1, 2))).toBe('2026-11-05T09:01:02')
})
