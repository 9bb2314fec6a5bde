import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { PositionLayout } from '../../../src/trade/position-layout/position-layout.ts'
import { readLayout } from '../../../src/trade/position-layout/read-layout.ts'
import { outlineOf } from './outlines.ts'

const eight = ['1', '2', '3', '4', '5', '6', '7', '8']
const caps = ['I1', 'I2', 'E1', 'E2']

describe('layouts in columns and rows', () => {
  test.each([
    ['row', eight, 'row', '1 2 3 4 5 6 7 8'],
    ['Row', caps, 'row', 'I1 I2 E1 E2'],
    ['2x4', eight, 'grid', '1 2 3 4 / 5 6 7 8'],
    ['grid 4x2', eight, 'grid', '1 2 / 3 4 / 5 6 / 7 8'],
    ['2 × 4', eight, 'grid', '1 2 3 4 / 5 6 7 8'],
    ['3x3', eight, 'grid', '1 2 3 / 4 5 6 / 7 8'],
    ['1 2 3 / 8 . 4 / 7 6 5', eight, 'free', '1 2 3 / 8 . 4 / 7 6 5'],
    ['I1 I2/E1 E2', caps, 'grid', 'I1 I2 / E1 E2'],
    ['i1 i2\ne2 e1', caps, 'grid', 'I1 I2 / E2 E1'],
    ['E2 E1 I2 I1', caps, 'row', 'E2 E1 I2 I1'],
    // What is empty all around is left out, what is empty between is not.
    ['. . / . I1 . I2 / . / . E1 . E2', caps, 'free', 'I1 . I2 / . / E1 . E2'],
    ['I1', ['I1'], 'row', 'I1'],
  ])('%s', (typed, positions, shape, outline) => {
    const layout = understood(typed, positions)
    expect(layout.shape).toBe(shape)
    expect(outlineOf(layout)).toBe(outline)
  })

  test('what is written as an outline is read as the same outline', () => {
    const outline = fc
      .record({ count: fc.integer({ min: 2, max: 40 }), columns: fc.integer({ min: 2, max: 12 }) })
      .chain(({ count, columns }) =>
        fc.record({
          columns: fc.constant(columns),
          marks: fc.shuffledSubarray([...named(count), ...Array(20).fill('.')], { minLength: count + 20 }),
        }),
      )
    fc.assert(
      fc.property(outline, ({ columns, marks }) => {
        const positions = marks.filter((mark) => mark !== '.')
        const rows: string[][] = []
        for (let at = 0; at < marks.length; at += columns) rows.push(marks.slice(at, at + columns))
        const typed = rows.map((row) => row.join(' ')).join(' / ')
        const layout = understood(typed, positions)
        expect(understood(outlineOf(layout), positions).places).toEqual(layout.places)
        const [first, ...others] = layout.places
        for (const { position, x, y } of others) {
          const at = (mark: string) => ({
            x: marks.indexOf(mark) % columns,
            y: Math.floor(marks.indexOf(mark) / columns),
          })
          const origin = at(first?.position ?? '')
          expect({ x: x - (first?.x ?? 0), y: y - (first?.y ?? 0) }).toEqual({
            x: at(position).x - origin.x,
            y: at(position).y - origin.y,
          })
        }
      }),
    )
  })
})

describe('circles', () => {
  test('of four: top, right, bottom, left', () => {
    expect(understood('circle', caps)).toEqual({
      shape: 'circle',
      places: [
        { position: 'I1', x: 0, y: -1 },
        { position: 'I2', x: 1, y: 0 },
        { position: 'E1', x: 0, y: 1 },
        { position: 'E2', x: -1, y: 0 },
      ],
    })
  })

  test('of six: the second at sixty degrees from the top', () => {
    const { places } = understood('circle', eight.slice(0, 6))
    expect(places[1]?.x).toBeCloseTo(Math.sqrt(3) / 2, 9)
    expect(places[1]?.y).toBeCloseTo(-0.5, 9)
  })
})

describe('what is no layout of these positions', () => {
  test.each([
    ['1 2 3 / 8 . 4 / 7 6', { code: 'layout-positions', missing: ['5'], twice: [], unknown: [] }],
    ['1 2 3 / 8 2 4 / 7 6 5', { code: 'layout-positions', missing: [], twice: ['2'], unknown: [] }],
    ['1 2 3 / 8 9 4 / 7 6 5', { code: 'layout-positions', missing: [], twice: [], unknown: ['9'] }],
    ['1 1 x x / 2 3 4 5 6 7', { code: 'layout-positions', missing: ['8'], twice: ['1'], unknown: ['x'] }],
    ['2x3', { code: 'layout-too-small', rows: 2, columns: 3, places: 6, positions: 8 }],
    ['0x0', { code: 'layout-too-small', rows: 0, columns: 0, places: 0, positions: 8 }],
    ['1x41', { code: 'layout-too-wide', rows: 1, columns: 41, most: 40 }],
    [`1 ${'. '.repeat(40)}2`, { code: 'layout-too-wide', rows: 1, columns: 42, most: 40 }],
    ['', { code: 'layout-form', typed: '', nearest: 'row' }],
    ['round', { code: 'layout-form', typed: 'round', nearest: 'row' }],
    ['cirlce', { code: 'layout-form', typed: 'cirlce', nearest: 'circle' }],
    ['2by4', { code: 'layout-form', typed: '2by4', nearest: '2x4' }],
  ])('%j', (typed, fault) => {
    expect(readLayout(typed, eight)).toEqual({ understood: false, fault })
  })

  test('more positions than a row or a set may have', () => {
    expect(fault('row', named(41))).toEqual({ code: 'layout-too-wide', rows: 1, columns: 41, most: 40 })
    expect(fault('circle', named(201))).toEqual({ code: 'layout-too-many', positions: 201, most: 200 })
  })

  test('two positions that differ in their case alone are told apart only as written', () => {
    expect(outlineOf(understood('i1 I1', ['I1', 'i1']))).toBe('i1 I1')
  })

  test('any text is read or refused, and a nearest form is understood', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 1, max: 40 }), (typed, count) => {
        const reading = readLayout(typed, named(count))
        if (reading.understood || reading.fault.code !== 'layout-form') return
        expect(readLayout(reading.fault.nearest, named(count)).understood).toBe(true)
      }),
    )
  })
})

function named(count: number): string[] {
  return Array.from({ length: count }, (_, index) => `P${index + 1}`)
}

function understood(typed: string, positions: readonly string[]): PositionLayout {
  const reading = readLayout(typed, positions)
  if (!reading.understood) throw new Error(`${typed}: ${JSON.stringify(reading.fault)}`)
  return reading.value
}

function fault(typed: string, positions: readonly string[]): unknown {
  const reading = readLayout(typed, positions)
  return reading.understood ? null : reading.fault
}
