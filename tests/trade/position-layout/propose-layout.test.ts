import fc from 'fast-check'
import { expect, test } from 'vitest'
import { proposeLayout } from '../../../src/trade/position-layout/propose-layout.ts'
import { readPositions } from '../../../src/trade/positions.ts'
import { outlineOf } from './outlines.ts'

test.each([
  ['A1..A4,B1..B4', 'lettered-rows', 'A1 A2 A3 A4 / B1 B2 B3 B4'],
  ['B1,B2,A1,A2', 'lettered-rows', 'A1 A2 / B1 B2'],
  ['I1..I4,E1..E4', 'named-rows', 'I1 I2 I3 I4 / E1 E2 E3 E4'],
  ['in1..in3,ex1..ex3', 'named-rows', 'in1 in2 in3 / ex1 ex2 ex3'],
  ['1L,1R,2L,2R', 'named-rows', '1L 2L / 1R 2R'],
  // The third exhaust cap is another piece: its place stays free.
  ['I1..I3,E1,E3', 'named-rows', 'I1 I2 I3 / E1 . E3'],
  ['I1..I8', 'numbered-row', 'I1 I2 I3 I4 I5 I6 I7 I8'],
  ['1..8', 'numbered-row', '1 2 3 4 5 6 7 8'],
  ['3,1,2', 'numbered-row', '1 2 3'],
  ['1..3,5,6', 'numbered-row', '1 2 3 . 5 6'],
  ['4..1', 'numbered-row', '4 3 2 1'],
  ['1,100,400', 'numbered-row', '1 100 400'],
  ['A..D', 'as-given', 'A B C D'],
  ['left,right', 'as-given', 'left right'],
  ['left1,right1', 'as-given', 'left1 right1'],
  // Both are a first one: the numbers do not tell them apart.
  ['1,01,2', 'as-given', '1 01 2'],
  ['I1,I2,front', 'as-given', 'I1 I2 front'],
])('%s: %s', (typed, rule, outline) => {
  const proposed = proposeLayout(positions(typed))
  expect(proposed.rule.rule).toBe(rule)
  expect(outlineOf(proposed.layout)).toBe(outline)
})

test('rows are told by name', () => {
  expect(proposeLayout(positions('I1..I4,E1..E4')).rule).toEqual({ rule: 'named-rows', rows: ['I', 'E'] })
})

test('more than a row holds is wrapped into rows of nearly equal length', () => {
  const { layout, rule } = proposeLayout(positions('1..90'))
  expect(rule).toEqual({ rule: 'wrapped', columns: 30 })
  expect(layout.places.at(-1)).toEqual({ position: '90', x: 29, y: 2 })
})

test('whatever the names, each position has one place of its own within 40 by 40', () => {
  const name = fc.stringMatching(/^[A-C]?[a-z]?[0-9]{0,3}[LR]?$/).filter((text) => text !== '')
  fc.assert(
    fc.property(fc.uniqueArray(name, { minLength: 1, maxLength: 200 }), (names) => {
      const { places } = proposeLayout(names).layout
      expect(places.map(({ position }) => position).toSorted()).toEqual(names.toSorted())
      expect(new Set(places.map(({ x, y }) => `${x},${y}`)).size).toBe(names.length)
      for (const { x, y } of places) {
        expect(x).toBeGreaterThanOrEqual(0)
        expect(y).toBeGreaterThanOrEqual(0)
        expect(Math.max(x, y)).toBeLessThan(40)
      }
    }),
    { numRuns: 500 },
  )
})

function positions(typed: string): string[] {
  const reading = readPositions(typed)
  if (!reading.understood) throw new Error(`not positions: ${typed}`)
  return reading.value
}
