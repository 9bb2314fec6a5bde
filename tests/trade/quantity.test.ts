import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readLength, readTorque, readVolume, type UnitSystem } from '../../src/trade/quantity.ts'

const metric = { units: 'metric' as UnitSystem }
const us = { units: 'us' as UnitSystem }

describe('volumes', () => {
  test.each([
    ['2.1 L', 2.1],
    ['2,1 l', 2.1],
    ['2.1L', 2.1],
    ['2100 ml', 2.1],
    ['350cc', 0.35],
    ['7 dl', 0.7],
    ['33 cl', 0.33],
    ['2 litres', 2],
    // By definition the US gallon is 231 cubic inches, the imperial gallon 4.54609 L; NIST SP 811, appendix B.
    ['1 US gal', 3.785411784],
    ['1 US qt', 0.946352946],
    ['1 us pint', 0.473176473],
    ['1 US fl oz', 0.0295735295625],
    ['1 imp gal', 4.54609],
    ['1 imp qt', 1.1365225],
    ['1 uk pt', 0.56826125],
    ['1 imp fl oz', 0.0284130625],
    ['1 1/2 US gal', 5.678117676],
    ['2 qt US', 1.892705892],
    // 9 US qt are 8.517 L, 9 imperial ones 10.229 L.
    ['9 US qt', 8.517176514],
    ['9 imp qt', 10.2287025],
  ])('%s is %d L', (typed, litres) => {
    expect(readVolume(typed, metric)).toEqual({ understood: true, value: { litres, typed } })
  })

  test.each([
    ['1 gal', 3.785411784],
    ['3 qt', 2.839058838],
    ['2 pt', 0.946352946],
  ])('%s is the US measure for who works in US units, and is asked about otherwise', (typed, litres) => {
    expect(readVolume(typed, us)).toEqual({ understood: true, value: { litres, typed } })
    const nearest = typed.replace(' ', ' US ')
    expect(readVolume(typed, metric)).toEqual({
      understood: false,
      code: 'us-or-imperial',
      part: typed,
      nearest,
    })
    expect(readVolume(nearest, metric)).toEqual({ understood: true, value: { litres, typed: nearest } })
  })

  test.each([
    ['', 'empty', '2.1 L'],
    ['L', 'number', '2.1 L'],
    ['1.2.3 L', 'number', '2.1 L'],
    ['2', 'unit', '2 L'],
    ['2 buckets', 'unit', '2 L'],
    ['2 constructor', 'unit', '2 L'],
    ['0 L', 'not-positive', '2.1 L'],
    ['-2 L', 'not-positive', '2.1 L'],
    ['10001 L', 'too-large', '2.1 L'],
    // A decimal comma, or two thousand one hundred?
    ['2,100 ml', 'thousands', '2100 ml'],
    ['2,100 L', 'thousands', '2.100 L'],
    ['1,234,567 ml', 'thousands', '2.1 L'],
  ])('%j: %s, nearest %s', (typed, code, nearest) => {
    expect(readVolume(typed, metric)).toEqual({ understood: false, code, part: typed, nearest })
    expect(readVolume(nearest, metric)).toMatchObject({ understood: true })
  })
})

describe('torques', () => {
  // Exact: 1 lbf is 0.45359237 kg x 9.80665 m/s2, 1 ft is 0.3048 m, 1 in is 0.0254 m; NIST SP 811, appendix B, prints
  // 1.355 818, 0.112 984 8 and 9.806 65.
  test.each([
    ['22 Nm', 22],
    ['22 N·m', 22],
    ['22Nm', 22],
    ['22 n.m', 22],
    ['22,5 Nm', 22.5],
    ['22 N m', 22],
    ['22 newton metres', 22],
    ['1 lbf·ft', 1.3558179483314],
    ['1 ft-lb', 1.3558179483314],
    ['1 ft lbs', 1.3558179483314],
    ['1 lbs ft', 1.3558179483314],
    ['1 foot-pounds', 1.3558179483314],
    ['1 lbf·in', 0.11298482902762],
    ['1 in-lb', 0.11298482902762],
    ['1 in lbs', 0.11298482902762],
    ['1 ozf·in', 0.0070615518142263],
    ['1 kgf·m', 9.80665],
    ['1 kgm', 9.80665],
    ['1 kpm', 9.80665],
    ['1 kgf·cm', 0.0980665],
    ['2,2 kgf·m', 21.57463],
    ['25 lbf-ft', 33.895448708285],
    ['47 lbf-ft', 63.723443571576],
    ['100 lbf-ft', 135.58179483314],
    ['7 kgf·m', 68.64655],
  ])('%s is %d N·m', (typed, newtonMetres) => {
    const reading = readTorque(typed)
    expect(reading).toMatchObject({ understood: true, value: { typed } })
    expect(reading.understood && reading.value.newtonMetres).toBeCloseTo(newtonMetres, 12)
  })

  // Pairs printed in US Army manuals: TM 9-2815-254-24 and TM 10-3930-669-20.
  test.each([
    ['61.5 lb-ft', 83.3, 0.1],
    ['29.5 lb-ft', 40, 0.05],
  ])('%s was printed beside %d N·m', (typed, printed, tolerance) => {
    const reading = readTorque(typed)
    if (!reading.understood) throw new Error(typed)
    expect(Math.abs(reading.value.newtonMetres - printed)).toBeLessThanOrEqual(tolerance)
  })

  test.each([
    ['', 'empty', '22 Nm'],
    ['Nm', 'number', '22 Nm'],
    ['twenty Nm', 'number', '22 Nm'],
    ['22', 'unit', '22 Nm'],
    ['22 lb', 'unit', '22 Nm'],
    ['22 constructor', 'unit', '22 Nm'],
    ['0 Nm', 'not-positive', '22 Nm'],
    ['-3 Nm', 'not-positive', '22 Nm'],
    ['3001 Nm', 'too-large', '22 Nm'],
    ['4 kNm', 'too-large', '22 Nm'],
    ['1,250 Nm', 'thousands', '1.250 Nm'],
  ])('%j: %s, nearest %s', (typed, code, nearest) => {
    expect(readTorque(typed)).toEqual({ understood: false, code, part: typed, nearest })
    expect(readTorque(nearest)).toMatchObject({ understood: true })
  })

  test('3000 N·m is still a torque', () => {
    expect(readTorque('3000 Nm')).toMatchObject({ understood: true })
  })
})

describe('lengths', () => {
  test.each([
    ['0.05 mm', 0.05],
    ['0,05 mm', 0.05],
    ['0 mm', 0],
    ['3 cm', 30],
    ['50 µm', 0.05],
    ['12 microns', 0.012],
    // 1 in is 25.4 mm exactly.
    ['0.002 in', 0.0508],
    ['0.003 in', 0.0762],
    ['0.004 in', 0.1016],
    ['0.006 in', 0.1524],
    ['0.008 in', 0.2032],
    ['0.010 in', 0.254],
    ['2 thou', 0.0508],
    ['1/2"', 12.7],
    ['1-1/2 in', 38.1],
    ['5 inches', 127],
  ])('%s is %d mm', (typed, millimetres) => {
    expect(readLength(typed)).toEqual({ understood: true, value: { millimetres, typed } })
  })

  test.each([
    ['', 'empty'],
    ['mm', 'number'],
    ['0.05', 'unit'],
    ['0.05 L', 'unit'],
    ['-0.05 mm', 'not-positive'],
    ['101 m', 'too-large'],
    ['1,000 mm', 'thousands'],
  ])('%j: %s', (typed, code) => {
    expect(readLength(typed)).toMatchObject({ understood: false, code, part: typed })
  })
})

test('a comma before a unit of another kind is answered with an example', () => {
  expect(readTorque('1,000 L')).toMatchObject({ code: 'thousands', nearest: '22 Nm' })
  expect(readVolume('1,000 mm', metric)).toMatchObject({ code: 'thousands', nearest: '2.1 L' })
})

test('whatever is typed, a quantity is a finite number within its limits or a form that is one', () => {
  const units = fc.constantFrom(
    'L',
    'ml',
    'qt',
    'US gal',
    'Nm',
    'ft-lb',
    'kgm',
    'mm',
    'in',
    '"',
    'thou',
    'toString',
    '',
  )
  const texts = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.tuple(fc.stringMatching(/^[-+0-9., /½]{0,8}$/), units).map(([number, unit]) => `${number} ${unit}`),
  )
  fc.assert(
    fc.property(texts, (text) => {
      const volume = readVolume(text, metric)
      if (volume.understood) expect(volume.value.litres > 0 && volume.value.litres <= 10_000).toBe(true)
      else expect(readVolume(volume.nearest, metric).understood).toBe(true)
      const torque = readTorque(text)
      if (torque.understood)
        expect(torque.value.newtonMetres > 0 && torque.value.newtonMetres <= 3000).toBe(true)
      else expect(readTorque(torque.nearest).understood).toBe(true)
      const length = readLength(text)
      if (length.understood)
        expect(length.value.millimetres >= 0 && length.value.millimetres <= 100_000).toBe(true)
      else expect(readLength(length.nearest).understood).toBe(true)
    }),
    { numRuns: 2000 },
  )
})
