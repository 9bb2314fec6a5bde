import { describe, expect, test } from 'vitest'
import { readFigure } from '../../../src/trade/convert/read-figure.ts'

const metric = { units: 'metric' } as const

describe('a figure as manuals print it', () => {
  test.each([
    ['40 N·m', 'single', [40]],
    ['-40 °C', 'single', [-40]],
    ['1-1/2 in', 'single', [38.1]],
    ['40 ± 4 N·m', 'tolerance', [40, 4]],
    ['40 +/- 4 N·m', 'tolerance', [40, 4]],
    ['40±4Nm', 'tolerance', [40, 4]],
    ['37..43 N·m', 'range', [37, 43]],
    ['37-43 N·m', 'range', [37, 43]],
    ['37 – 43 Nm', 'range', [37, 43]],
    ['37 to 43 Nm', 'range', [37, 43]],
    ['0,05-0,10 mm', 'range', [0.05, 0.1]],
    ['-20..90 °C', 'range', [-20, 90]],
    ['212 ± 9 °F', 'tolerance', [100, 5]],
    ['14-212 °F', 'range', [-10, 100]],
  ])('%s: %s %j', (text, form, bases) => {
    const reading = readFigure(text, metric)
    expect(reading).toMatchObject({ understood: true, value: { form, typed: text } })
    if (!reading.understood) return
    for (const [i, amount] of reading.value.amounts.entries())
      expect(amount.base).toBeCloseTo(bases[i] ?? Number.NaN, 9)
    expect(reading.value.amounts).toHaveLength(bases.length)
  })
})

test.each([
  ['', 'empty'],
  ['± 4 N·m', 'number'],
  ['40 ± 4', 'unit'],
  ['40 ± 0 N·m', 'not-positive'],
  ['40 ± 9999 N·m', 'too-large'],
  ['37..43 furlongs', 'unit'],
  ['37..40..43 Nm', 'number'],
])('%j: %s', (text, code) => {
  expect(readFigure(text, metric)).toMatchObject({ understood: false, code })
})
