import { describe, expect, test } from 'vitest'
import { readPass, readPasses } from '../../src/trade/tightening-pass.ts'

describe('one pass', () => {
  test.each([
    ['20 Nm', { kind: 'torque', newtonMetres: 20 }],
    ['torque 20 Nm', { kind: 'torque', newtonMetres: 20 }],
    ['90 deg', { kind: 'angle', degrees: 90 }],
    ['90 degrees', { kind: 'angle', degrees: 90 }],
    ['90°', { kind: 'angle', degrees: 90 }],
    ['+90°', { kind: 'angle', degrees: 90 }],
    ['+ 90 deg', { kind: 'angle', degrees: 90 }],
    ['22,5 deg', { kind: 'angle', degrees: 22.5 }],
    ['1/4 turn', { kind: 'angle', degrees: 90 }],
    ['¼ turn', { kind: 'angle', degrees: 90 }],
    ['quarter turn', { kind: 'angle', degrees: 90 }],
    ['1/6 turn', { kind: 'angle', degrees: 60 }],
    ['1/3 turn', { kind: 'angle', degrees: 120 }],
    ['1-1/2 turns', { kind: 'angle', degrees: 540 }],
    // A flat of a hexagon is 60 degrees.
    ['2 flats', { kind: 'angle', degrees: 120 }],
    ['snug', { kind: 'snug' }],
    ['hand tight', { kind: 'snug' }],
    ['check 22 Nm', { kind: 'check', newtonMetres: 22 }],
    ['check: 22 Nm', { kind: 'check', newtonMetres: 22 }],
  ])('%s', (typed, pass) => {
    expect(readPass(typed)).toEqual({ understood: true, value: { ...pass, typed } })
  })

  test.each([
    ['', 'empty', '20 Nm'],
    ['20', 'form', '20 Nm'],
    ['tight', 'form', '22 Nm'],
    ['check', 'form', 'check 22 Nm'],
    ['0 Nm', 'torque', '22 Nm'],
    ['-5 Nm', 'torque', '22 Nm'],
    ['3001 Nm', 'torque', '22 Nm'],
    ['check 0 Nm', 'torque', 'check 22 Nm'],
    ['1,250 Nm', 'torque', '1.250 Nm'],
    ['-90 deg', 'angle', '90 deg'],
    ['0 deg', 'angle', '90 deg'],
    ['721 deg', 'angle', '90 deg'],
    ['constructor turn', 'form', '22 Nm'],
  ])('%j: %s, nearest %s', (typed, code, nearest) => {
    expect(readPass(typed)).toEqual({ understood: false, code, part: typed, nearest })
    expect(readPass(nearest)).toMatchObject({ understood: true })
  })
})

describe('all passes of a tightening', () => {
  test.each([
    ['20 Nm, 40 Nm, 90 deg', ['20 Nm', '40 Nm', '90 deg']],
    ['40 Nm + 90° + 90°', ['40 Nm', '90°', '90°']],
    ['2,2 kgf·m, 90 deg', ['2,2 kgf·m', '90 deg']],
    ['20Nm,40Nm', ['20Nm', '40Nm']],
    ['snug; 10 Nm then 20 Nm', ['snug', '10 Nm', '20 Nm']],
    ['40 Nm +90°', ['40 Nm', '90°']],
  ])('%s', (typed, passes) => {
    const reading = readPasses(typed)
    expect(reading.understood && reading.value.map((pass) => pass.typed)).toEqual(passes)
  })

  // TM 10-3930-669-20, appendix E: 29.5 lb-ft, then 45 + 45 + 45 + 30 degrees, 165 in all.
  test('a published sequence adds up', () => {
    const reading = readPasses('29.5 lb-ft, 45 deg, 45 deg, 45 deg, 30 deg')
    if (!reading.understood) throw new Error(reading.part)
    const degrees = reading.value.map((pass) => (pass.kind === 'angle' ? pass.degrees : 0))
    expect(degrees.reduce((sum, each) => sum + each)).toBe(165)
  })

  test.each([
    ['', 'empty', '', '20 Nm, 40 Nm, 90 deg'],
    [' , ', 'empty', '', '20 Nm, 40 Nm, 90 deg'],
    ['20, 40 Nm', 'form', '20', '20 Nm'],
    ['20 Nm, 0 deg', 'angle', '0 deg', '90 deg'],
  ])('%j: %s', (typed, code, part, nearest) => {
    expect(readPasses(typed)).toEqual({ understood: false, code, part, nearest })
  })

  test('thirteen passes are a slip', () => {
    expect(readPasses(Array(13).fill('20 Nm').join(', '))).toMatchObject({
      understood: false,
      code: 'too-many',
    })
    expect(readPasses(Array(12).fill('20 Nm').join(', '))).toMatchObject({ understood: true })
  })
})
