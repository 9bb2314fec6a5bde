import { expect, test } from 'vitest'
import { boltStretch } from '../../../../src/trade/measuring/bolt-stretch.ts'
import { readStretch } from '../../../../src/trade/measuring/reading/read-stretch.ts'

test('the worked example of a textbook: 0.0036 in', () => {
  const read = readStretch('10000 lbf over 5 in area 0.46 in2 modulus 30e6 psi')
  expect(read.understood && (boltStretch(read.value) / 25.4).toFixed(4)).toBe('0.0036')
})

test.each([
  // ISO 898-1, As,nom: M10 58.0 mm², M10x1.25 61.2 mm².
  ['20 kN over 90 mm M10', 58],
  ['20 kN over 90 mm, M10x1.25', 61.2],
  ['20000 N over 9 cm of M10', 58],
])('%s: of its thread', (text, areaMm2) => {
  const read = readStretch(text)
  expect(read).toMatchObject({
    understood: true,
    value: { newtons: 20_000, lengthMm: 90, modulusMPa: 205_000 },
  })
  expect(read.understood && read.value.areaMm2).toBeCloseTo(areaMm2, 1)
})

test.each([
  ['20 over 90 mm M10', 'force'],
  ['0 kN over 90 mm M10', 'force'],
  ['20 kN M10', 'length'],
  ['20 kN over 0 mm M10', 'length'],
  ['20 kN over 90 mm', 'section'],
  ['20 kN over 90 mm 1/4 NPT', 'section'],
  ['20 kN over 90 mm area 0 mm2', 'section'],
  ['20 kN over 90 mm area 58 mm2 M10', 'words'],
  ['20 kN over 90 mm M10 modulus 0 GPa', 'modulus'],
])('%s is not understood: %s', (text, code) => {
  const read = readStretch(text)
  expect(read).toMatchObject({ understood: false, code })
  expect(!read.understood && readStretch(read.nearest).understood).toBe(true)
})
