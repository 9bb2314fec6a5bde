import { describe, expect, test } from 'vitest'
import { readPass } from '../../../src/trade/tightening-passes/tightening-pass.ts'

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
    ['Check 22 NM', { kind: 'check', newtonMetres: 22 }],
    ['1/4 Turn', { kind: 'angle', degrees: 90 }],
    ['check 22 Nm', { kind: 'check', newtonMetres: 22 }],
    ['check: 22 Nm', { kind: 'check', newtonMetres: 22 }],
    ['recheck at 22 Nm', { kind: 'check', newtonMetres: 22 }],
    ['final check 22 Nm', { kind: 'check', newtonMetres: 22 }],
    ['snug to 10 Nm', { kind: 'torque', newtonMetres: 10 }],
    ['finger-tight', { kind: 'snug' }],
    ['by hand', { kind: 'snug' }],
    // The geometry of the heads: a flat of a hexagon is 60 degrees, a point of a bi-hexagon 30.
    ['1 flat', { kind: 'angle', degrees: 60 }],
    ['1 point', { kind: 'angle', degrees: 30 }],
    ['3 points', { kind: 'angle', degrees: 90 }],
    // TM 9-2320-366-34-4: torque, then a marked sixth of a turn.
    ['a marked sixth of a turn', { kind: 'angle', degrees: 60 }],
    ['half a turn', { kind: 'angle', degrees: 180 }],
    ['a full turn', { kind: 'angle', degrees: 360 }],
    ['a turn', { kind: 'angle', degrees: 360 }],
    ['a further 90 deg', { kind: 'angle', degrees: 90 }],
    // TM 5-3805-258-24-2: 40 +/- 4 N-m (30 +/- 3 lb-ft); TM 5-3825-226-24: then 120 +/- 5 degrees.
    ['40 ± 4 Nm', { kind: 'torque', newtonMetres: 40 }],
    ['40 +/- 4 N-m', { kind: 'torque', newtonMetres: 40 }],
    ['40 Nm ± 10 %', { kind: 'torque', newtonMetres: 40 }],
    ['40 +/- 4 N-m (30 +/- 3 lb-ft)', { kind: 'torque', newtonMetres: 40 }],
    // TM 10-3930-669-20, appendix E.
    ['29.5 lb-ft (40 N-m)', { kind: 'torque', newtonMetres: expect.closeTo(39.997, 3) }],
    ['check 36-43 Nm (27-32 lb-ft)', { kind: 'check', newtonMetres: 39.5 }],
    ['90 deg (1/4 turn)', { kind: 'angle', degrees: 90 }],
    ['120 ± 5 deg', { kind: 'angle', degrees: 120 }],
    // Vehicle service data: 37-43 N-m, +85-95 degrees.
    ['37-43 N·m', { kind: 'torque', newtonMetres: 40 }],
    ['37..43 Nm', { kind: 'torque', newtonMetres: 40 }],
    ['37,5 to 42,5 Nm', { kind: 'torque', newtonMetres: 40 }],
    ['+85-95 deg', { kind: 'angle', degrees: 90 }],
    ['30 % of 60 Nm', { kind: 'torque', newtonMetres: 18 }],
    ['12,5% of 60 Nm', { kind: 'torque', newtonMetres: 7.5 }],
    ['check 100 % of 60 Nm', { kind: 'check', newtonMetres: 60 }],
    ['back off', { kind: 'back-off' }],
    ['back off fully', { kind: 'back-off' }],
    ['Backed off', { kind: 'back-off' }],
    ['slacken', { kind: 'back-off' }],
    ['loosen all', { kind: 'back-off' }],
    ['back off 180 deg', { kind: 'back-off', degrees: 180 }],
    ['back off by 180°', { kind: 'back-off', degrees: 180 }],
    ['loosen a full turn', { kind: 'back-off', degrees: 360 }],
    ['slacken 1/2 turn', { kind: 'back-off', degrees: 180 }],
    ['mark', { kind: 'witness' }],
    ['witness marks', { kind: 'witness' }],
    ['Paint mark', { kind: 'witness' }],
    ['draw the witness marks', { kind: 'witness' }],
    ['mark all', { kind: 'witness' }],
    // The last pass of ASME PCC-1: clockwise, round and round, until no nut turns.
    ['check 60 Nm clockwise', { kind: 'check', newtonMetres: 60, round: true }],
    ['60 Nm, round and round', { kind: 'torque', newtonMetres: 60, round: true }],
    ['100 % of 60 Nm clockwise', { kind: 'torque', newtonMetres: 60, round: true }],
    ['30 deg all round', { kind: 'angle', degrees: 30, round: true }],
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
    ['deg', 'form', '22 Nm'],
    ['clockwise', 'form', '22 Nm'],
    ['90 deg clockwise', 'form', '90 deg all round'],
    ['60 Nm counter-clockwise', 'form', '60 Nm'],
    // The same number in both units is a slip of the pen.
    ['40 Nm (40 lbf·ft)', 'pair', '40 Nm'],
    ['check 37-43 Nm (27-42 lb-ft)', 'pair', 'check 37-43 Nm'],
    ['90 deg (1/3 turn)', 'pair', '90 deg'],
    ['40 Nm (90 deg)', 'pair', '40 Nm'],
    ['40 Nm (new bolts)', 'pair', '40 Nm'],
    ['4 ± 4 Nm', 'range', '36..44 Nm'],
    ['43-37 Nm', 'range', '36..44 Nm'],
    ['37 Nm - 43 lbf·ft', 'range', '36..44 Nm'],
    ['40 ± 4', 'range', '36..44 Nm'],
    ['back off 0 deg', 'angle', 'back off 180 deg'],
    ['back off 20 Nm', 'form', 'back off 180 deg'],
    ['back off fully 180 deg', 'form', 'back off 180 deg'],
  ])('%j: %s, nearest %s', (typed, code, nearest) => {
    expect(readPass(typed)).toEqual({ understood: false, code, part: typed, nearest })
    expect(readPass(nearest)).toMatchObject({ understood: true })
  })

  test.each([
    ['30 %', 'percent-torque', '30 % of 60 Nm'],
    ['30 % of', 'form', '30 Nm'],
    ['30 % of it', 'percent-torque', '30 % of 60 Nm'],
    ['101 % of 45 Nm', 'percent', '100 % of 45 Nm'],
    ['0 % of 45 Nm', 'percent', '100 % of 45 Nm'],
    ['120 %', 'percent', '100 % of 60 Nm'],
  ])('a percentage, %j: %s, nearest %s', (typed, code, nearest) => {
    expect(readPass(typed)).toEqual({ understood: false, code, part: typed, nearest })
    expect(readPass(nearest)).toMatchObject({ understood: true })
  })
})
