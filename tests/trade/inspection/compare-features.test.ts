import { expect, test } from 'vitest'
import { featuresFor } from '../../../src/trade/inspection/compare-features.ts'
import { featuresByKind } from '../../../src/trade/inspection/features-table.ts'
import { namedKinds, otherThings } from './named-kinds.ts'

// Common practice.
test.each([
  ['water pump gasket', ['outline', 'bolt holes', 'water and oil holes', 'thickness', 'variant']],
  ['water pump', ['ports', 'bolt holes', 'threads', 'shaft and drive', 'connectors', 'studs', 'variant']],
  ['fuel pump', ['ports', 'bolt holes', 'threads', 'shaft and drive', 'connectors', 'studs', 'variant']],
  ['head bolts', ['thread', 'length', 'head', 'class', 'variant']],
  ['cam chain tensioner bolt', ['thread', 'length', 'head', 'class', 'variant']],
])('%s: %j', (name, features) => {
  expect(featuresFor(name)).toEqual(features)
})

test.each([
  ['oil pressure switch', 'connector'],
  ['oil pressure switch', 'thread'],
  ['oil pressure switch', 'length'],
  ['upper radiator hose', 'bends'],
  ['upper radiator hose', 'bores'],
  ['upper radiator hose', 'length'],
  ['timing belt', 'number of teeth or ribs'],
  ['thermostat', 'temperature on it'],
  ['exhaust valve', 'length'],
  ['spark plugs', 'reach'],
])('%s: %s', (name, feature) => {
  expect(featuresFor(name)).toContain(feature)
})

test.each(otherThings)('%j is compared as any part is', (name) => {
  expect(featuresFor(name)).toEqual(['ports', 'holes', 'threads', 'lengths', 'connectors', 'variant'])
})

test('every entry is reached by a natural name', () => {
  for (const [kind, features] of Object.entries(featuresByKind)) {
    const name = namedKinds.find(([, named]) => named === kind)?.[0] ?? ''
    expect.soft(featuresFor(name), kind).toEqual([...features, 'variant'])
  }
})

test('what is compared can be told with commas between', () => {
  for (const feature of namedKinds.flatMap(([name]) => featuresFor(name))) {
    expect.soft(feature).toMatch(/^[a-z][a-z -]{2,39}$/)
  }
})

test('two things in one name are compared for both', () => {
  expect(featuresFor('nut and bolt')).toEqual([
    'thread',
    'height',
    'flats',
    'lock',
    'class',
    'length',
    'head',
    'variant',
  ])
})
