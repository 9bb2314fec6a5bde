import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type ChosenSymbol, chooseSymbol } from '../../../src/label/symbol/choose-symbol.ts'
import { modulesOf, quietZone } from '../../../src/label/symbol/label-symbol.ts'
import { survival } from '../../../src/label/symbol/survival.ts'

// The sides of whole symbols, (modules + 8) x module, are published so: 37 modules of 0.396 mm are 14.652 mm (GS1
// General Specifications, 29 modules with their quiet zone).
describe('a symbol that fits', () => {
  const room = fc.double({ min: 8, max: 60, noNaN: true })
  const dpi = fc.constantFrom(203, 300, 600)
  const symbols = fc.integer({ min: 1, max: 4 })

  test('stays in its room, has whole dots, and modules that are printed and read', () => {
    fc.assert(
      fc.property(room, room, symbols, dpi, (width, height, count, resolution) => {
        const chosen = chooseSymbol({ width, height, symbols: count }, resolution)
        if ('code' in chosen) return
        const across = modulesOf(chosen.version) + 2 * quietZone
        expect(chosen.size).toBeCloseTo(across * chosen.module, 9)
        expect(chosen.size).toBeLessThanOrEqual(Math.min(width, height) + 1e-4)
        expect(Number.isInteger(chosen.dots)).toBe(true)
        expect(chosen.module).toBeCloseTo((chosen.dots * 25.4) / resolution, 9)
        expect(chosen.dots).toBeGreaterThanOrEqual(4)
        expect(chosen.module).toBeGreaterThanOrEqual(0.4)
      }),
    )
  })

  test('fills it: one dot more a module would not go in', () => {
    fc.assert(
      fc.property(room, symbols, dpi, (side, count, resolution) => {
        const chosen = chooseSymbol({ width: side, height: side, symbols: count }, resolution)
        if ('code' in chosen) return
        expect((chosen.size * (chosen.dots + 1)) / chosen.dots).toBeGreaterThan(side)
      }),
    )
  })

  test.each([
    [14.52, 203, 1, 4],
    [12.3, 300, 1, 5],
    [12.3, 600, 1, 10],
  ])(
    '%s mm at %d dpi hold version %d with modules of %d dots, and no other',
    (side, resolution, version, dots) => {
      expect(chooseSymbol({ width: side, height: 99, symbols: 2 }, resolution)).toMatchObject({
        version,
        dots,
      })
    },
  )
})

describe('no symbol', () => {
  test.each([
    // 29 modules of four dots of 25.4 / 203 mm; five dots at 300 dpi, for four are below 0.4 mm; ten at 600 dpi.
    [14.5, 203, { needed: (29 * 4 * 25.4) / 203, dots: 4, module: (4 * 25.4) / 203 }],
    [12.2, 300, { needed: (29 * 5 * 25.4) / 300, dots: 5, module: (5 * 25.4) / 300 }],
    [12.2, 600, { needed: (29 * 10 * 25.4) / 600, dots: 10, module: (10 * 25.4) / 600 }],
  ])('in %s mm at %d dpi', (room, dpi, facts) => {
    const refusal = { code: 'symbol-too-small', room, dpi, ...facts }
    expect(chooseSymbol({ width: room, height: 50, symbols: 2 }, dpi)).toEqual(refusal)
    expect(chooseSymbol({ width: 50, height: room, symbols: 2 }, dpi)).toEqual(refusal)
    const enough = { width: facts.needed, height: facts.needed, symbols: 2 }
    expect(chooseSymbol(enough, dpi)).toMatchObject({ version: 1, dots: facts.dots })
  })
})

test.each([1, 2, 3, 4])('with %d symbols no version that fits was read clearly more often', (symbols) => {
  const measured = survival.filter((row) => row.symbols === symbols && row.module >= 0.5)
  expect(measured.length).toBeGreaterThan(1)
  for (const { version, module, readings } of measured) {
    const side = (modulesOf(version) + 2 * quietZone) * module
    // A printer of exactly eight dots to the millimetre, as in the measurement.
    const chosen = chooseSymbol({ width: side, height: side, symbols }, 8 * 25.4) as ChosenSymbol
    const row = measured.find((each) => each.version === chosen.version && each.module === chosen.module)
    expect(row?.readings).toBeGreaterThanOrEqual(readings - 20)
  }
})

test('the smallest version is not chosen for being the smallest', () => {
  const versions = [16.6, 20.8, 24.8, 30].map((side) => {
    return (chooseSymbol({ width: side, height: side, symbols: 2 }, 203) as ChosenSymbol).version
  })
  expect(versions.filter((version) => version > 1)).not.toEqual([])
})
