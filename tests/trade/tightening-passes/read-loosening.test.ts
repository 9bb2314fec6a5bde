import { describe, expect, test } from 'vitest'
import { readLoosening } from '../../../src/trade/tightening-passes/read-loosening.ts'

describe('the passes of a loosening', () => {
  test.each([
    ['1/4 turn, 1/2 turn, fully', [90, 180, undefined]],
    // A service manual: all bolts in reverse order by 180 degrees, again by 180.
    ['180 deg, 180 deg', [180, 180]],
    ['back off 90 deg, then off', [90, undefined]],
    ['fully', [undefined]],
  ])('%s', (typed, degrees) => {
    const reading = readLoosening(typed)
    if (!reading.understood) throw new Error(reading.part)
    expect(reading.value.map((pass) => pass.kind === 'back-off' && pass.degrees)).toEqual(degrees)
  })

  test.each([
    ['', 'empty', ''],
    ['20 Nm', 'form', '20 Nm'],
    ['1/4 turn, mark', 'form', 'mark'],
    ['20 Nm, 40 Nm, snug', 'form', '20 Nm'],
    [Array(21).fill('1/4 turn').join(', '), 'too-many', Array(21).fill('1/4 turn').join(', ')],
    ['0 deg', 'angle', '0 deg'],
    // No torque is ever near: it loosens nothing.
    ['90 deg, fre', 'form', 'fre'],
    ['90 deg, max deg, free', 'form', 'max deg'],
    ['0 Nm', 'form', '0 Nm'],
  ])('%j: %s', (typed, code, part) => {
    let reading = readLoosening(typed)
    expect(reading).toMatchObject({ understood: false, code, part })
    const figures = reading.understood || typed === '' ? [] : (reading.nearest.match(/\d+/g) ?? [])
    expect(typed.match(/\d+/g) ?? []).toEqual(expect.arrayContaining(figures))
    for (let step = 0; step < 3 && !reading.understood; step++) reading = readLoosening(reading.nearest)
    expect(reading.understood).toBe(true)
  })
})
