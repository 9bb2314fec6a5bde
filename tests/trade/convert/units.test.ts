import fc from 'fast-check'
import { unit as mathUnit } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { fromUnit, inUnit, type Kind, unitsOf } from '../../../src/trade/convert/units.ts'

const kinds = Object.keys(unitsOf) as Kind[]
const unit = (kind: Kind, name: string) => {
  const found = unitsOf[kind].find((each) => each.name === name)
  if (!found) throw new Error(`no unit ${name}`)
  return found
}

describe('factors', () => {
  // NIST SP 811, appendix B.8 and B.9; those printed exactly are exact, the others to the places printed.
  test.each([
    ['torque', 'lbf·ft', 1.355818, 1e-6],
    ['torque', 'lbf·in', 0.1129848, 3e-7],
    ['torque', 'kgf·m', 9.80665, 1e-12],
    ['torque', 'kgf·cm', 0.0980665, 1e-12],
    ['length', 'in', 25.4, 1e-12],
    ['length', 'thou', 0.0254, 1e-12],
    ['length', 'µm', 0.001, 1e-12],
    ['volume', 'US qt', 0.9463529, 1e-7],
    ['volume', 'imp gal', 4.54609, 1e-12],
    ['volume', 'US gal', 3.785412, 1e-6],
    ['pressure', 'psi', 6.894757, 1e-6],
    ['pressure', 'bar', 100, 1e-12],
    ['pressure', 'kgf/cm²', 98.0665, 1e-12],
  ] as const)('%s: 1 %s = %d', (kind, name, published, tolerance) => {
    expect(Math.abs(fromUnit(1, unit(kind, name)) - published)).toBeLessThanOrEqual(tolerance * published)
  })

  // The two fixed points of the scales, and where they meet.
  test.each([
    [32, 0],
    [212, 100],
    [-40, -40],
  ])('%d °F = %d °C', (fahrenheit, celsius) => {
    expect(fromUnit(fahrenheit, unit('temperature', '°F'))).toBeCloseTo(celsius, 9)
    expect(inUnit(celsius, unit('temperature', '°F'))).toBeCloseTo(fahrenheit, 9)
  })

  test('a pound-force foot is twelve pound-force inches, an imperial gallon four quarts, an inch a thousand thou', () => {
    expect(inUnit(fromUnit(1, unit('torque', 'lbf·ft')), unit('torque', 'lbf·in'))).toBe(12)
    expect(inUnit(fromUnit(1, unit('volume', 'imp gal')), unit('volume', 'imp qt'))).toBe(4)
    expect(inUnit(fromUnit(1, unit('volume', 'US gal')), unit('volume', 'US qt'))).toBe(4)
    expect(inUnit(fromUnit(1, unit('length', 'in')), unit('length', 'thou'))).toBe(1000)
  })
})

test('there and back is where one began', () => {
  const pair = fc.constantFrom(...kinds.flatMap((kind) => unitsOf[kind]))
  fc.assert(
    fc.property(pair, fc.double({ min: 0.001, max: 10_000, noNaN: true }), (of, number) => {
      expect(Math.abs(inUnit(fromUnit(number, of), of) / number - 1)).toBeLessThan(1e-9)
    }),
  )
})

describe('beside another library', () => {
  // mathjs has no imperial measures; its psi and its fluid measures are rounded to ten figures or so.
  const names: Partial<Record<Kind, Record<string, string>>> = {
    torque: { N·m: 'N m', lbf·ft: 'lbf ft', lbf·in: 'lbf in', kgf·m: 'kgf m', kgf·cm: 'kgf cm' },
    length: { mm: 'mm', in: 'inch', thou: 'mil', µm: 'um' },
    volume: { L: 'L', 'US qt': 'quart', 'US gal': 'gallon', mL: 'mL' },
    pressure: { kPa: 'kPa', bar: 'bar', psi: 'psi', 'kgf/cm²': 'kgf/cm^2' },
    temperature: { '°C': 'degC', '°F': 'degF' },
  }
  const pairs = Object.entries(names).flatMap(([kind, of]) =>
    Object.entries(of).flatMap(([from, theirFrom]) =>
      Object.entries(of).map(([to, theirTo]) => [kind as Kind, from, to, theirFrom, theirTo] as const),
    ),
  )

  test.each(pairs)('%s: %s in %s', (kind, from, to, theirFrom, theirTo) => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 3000, noNaN: true }), (number) => {
        const ours = inUnit(fromUnit(number, unit(kind, from)), unit(kind, to))
        const theirs = mathUnit(number, theirFrom).toNumber(theirTo)
        expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(theirs), 1e-6) + 1e-9)
      }),
      { numRuns: 20 },
    )
  })
})
