import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fahrenheit, readTemperature } from '../../../src/trade/coolant/temperature.ts'

describe('temperatures', () => {
  // Degrees Celsius are (F - 32) / 1.8, exactly; NIST SP 811, appendix B.
  test.each([
    ['-25 °C', -25],
    ['-25C', -25],
    ['−25 °C', -25],
    ['minus 25 C', -25],
    ['-2,5 celsius', -2.5],
    ['90 deg C', 90],
    ['90 degrees C', 90],
    ['-13 F', -25],
    ['0 °F', -17.777777777778],
    ['-40 fahrenheit', -40],
    ['212 F', 100],
  ])('%s is %d °C', (typed, celsius) => {
    expect(readTemperature(typed)).toEqual({
      understood: true,
      value: { celsius: expect.closeTo(celsius, 10), typed },
    })
  })

  test.each([
    ['', 'empty', '-25 °C'],
    ['cold', 'number', '-25 °C'],
    ['C', 'number', '-25 °C'],
    ['-25 K', 'number', '-25 °C'],
    ['-25', 'celsius-or-fahrenheit', '-25 °C'],
    ['-25 °', 'celsius-or-fahrenheit', '-25 °C'],
    ['-300 C', 'out-of-range', '-25 °C'],
    ['2500 C', 'out-of-range', '-25 °C'],
  ])('%j is not understood: %s', (typed, code, nearest) => {
    expect(readTemperature(typed)).toEqual({ understood: false, code, part: typed, nearest })
    expect(readTemperature(nearest).understood).toBe(true)
  })

  test('to Fahrenheit and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1000, max: 2000 }), (tenths) => {
        const celsius = tenths / 10
        expect(readTemperature(`${fahrenheit(celsius).toFixed(6)} F`)).toMatchObject({
          value: { celsius: expect.closeTo(celsius, 5) },
        })
      }),
    )
  })
})
