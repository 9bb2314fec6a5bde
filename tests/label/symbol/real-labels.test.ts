import { describe, expect, test } from 'vitest'
import { damages } from '../../support/damage/damages.ts'
import { printedLabel } from '../../support/damage/printed-label.ts'
import { realLabel, realReadings } from '../../support/damage/real-labels.ts'
import { bag, blank } from '../layout/samples.ts'

// What is measured on symbols alone must hold for the labels that come out of the printer, with their words.
describe.each([
  ['an unused label', blank],
  ['a bag', bag],
] as const)('%s of 64 x 34 mm at 203 dpi', (_, content) => {
  test('has three symbols where the survey has them', () => {
    const symbols = realLabel(content).shapes.filter((shape) => shape.kind === 'symbol')
    const measured = printedLabel('017000318', {
      version: 1,
      level: 'H',
      dots: 4,
      placement: 'three',
    }).symbols
    expect(symbols).toHaveLength(3)
    for (const { left, top } of measured) {
      const distances = symbols.map(({ x, y }) => Math.hypot(x - left / 8, y - top / 8))
      expect(Math.min(...distances)).toBeLessThan(1)
    }
    for (const { modules, module } of symbols) {
      expect(modules).toHaveLength(21)
      expect(module).toBeCloseTo((4 * 25.4) / 203, 6)
    }
  })

  test.each([
    ['oil10', 16, 16],
    ['oil20', 16, 15],
  ] as const)('outlives %s: of %d at least %d are read, and none wrongly', async (name, labels, least) => {
    const readings = await realReadings(content, damages[name], labels)
    expect(readings.flatMap(({ wrong }) => wrong)).toEqual([])
    expect(readings.filter(({ zxing }) => zxing).length).toBeGreaterThanOrEqual(least)
  })
})
