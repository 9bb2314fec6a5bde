import { describe, expect, test } from 'vitest'
import { readTeeth } from '../../../src/trade/timing/read-teeth.ts'

describe('teeth of a timing drive', () => {
  const direct = [{ driver: 24, driven: 48 }]
  test.each([
    ['24/48', direct],
    ['24:48', direct],
    ['24 / 48', direct],
    ['24-48', direct],
    ['24 48', direct],
    ['24 teeth crank, 48 teeth cam', direct],
    ['crank 24 cam 48', direct],
    [
      '24/36 30/40',
      [
        { driver: 24, driven: 36 },
        { driver: 30, driven: 40 },
      ],
    ],
    [
      '24/36, 30/40',
      [
        { driver: 24, driven: 36 },
        { driver: 30, driven: 40 },
      ],
    ],
  ])('%s', (typed, value) => {
    expect(readTeeth(typed)).toEqual({ understood: true, value })
  })

  test.each([
    ['', 'empty', '24/48'],
    ['many', 'pair', '24/48'],
    ['24', 'pair', '24/48'],
    ['20', 'pair', '20/40'],
    ['48 cam', 'pair', '24/48'],
    ['24/48/96', 'pair', '24/48'],
    ['24/48 3', 'pair', '24/48'],
    ['24.5/49', 'pair', '24/48'],
    ['-24/48', 'pair', '24/48'],
  ])('%j is not understood: %s', (typed, code, nearest) => {
    expect(readTeeth(typed)).toEqual({ understood: false, code, part: typed, nearest })
    expect(readTeeth(nearest).understood).toBe(true)
  })
})
