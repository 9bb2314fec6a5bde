import { describe, expect, test } from 'vitest'
import { unitAsTyped } from '../../../src/trade/coolant/unit-as-typed.ts'
import { readVolume } from '../../../src/trade/quantity.ts'

test.each([
  ['10 L', 'L', 1],
  ['2,1 litres', 'L', 1],
  ['2100 ml', 'ml', 0.001],
  ['12 US qt', 'US qt', 0.946352946],
  ['12 imp qt', 'imp qt', 1.1365225],
  ['12 qt', 'US qt', 0.946352946],
  ['3 quarts', 'US quarts', 0.946352946],
  ['1 1/2 US gal', 'US gal', 3.785411784],
  ['1½ gal', 'US gal', 3.785411784],
  ['2 qt US', 'qt US', 0.946352946],
])('%s', (typed, name, litres) => {
  const volume = readVolume(typed, { units: 'us' })
  if (!volume.understood) throw new Error(typed)
  expect(unitAsTyped(volume.value)).toEqual({ name, litres: expect.closeTo(litres, 10) })
})

describe('a volume from elsewhere', () => {
  test('is told in litres', () => {
    expect(unitAsTyped({ litres: 2.1, typed: 'about two' })).toEqual({ name: 'L', litres: 1 })
  })
})
