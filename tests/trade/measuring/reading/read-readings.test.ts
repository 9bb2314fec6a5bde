import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readReadings } from '../../../../src/trade/measuring/reading/read-readings.ts'

const values = (text: string) => {
  const read = readReadings(text)
  return read.understood ? read.value.readings.map(({ mm }) => mm) : read
}

describe('readings', () => {
  test.each([
    ['0.02 0.03 0.05, 0.02', [0.02, 0.03, 0.05, 0.02]],
    ['0.02,0.03,0.05', [0.02, 0.03, 0.05]],
    ['0,02 0,03', [0.02, 0.03]],
    ['0,02, 0,03; 0,02', [0.02, 0.03, 0.02]],
    ['76,012 76,015', [76.012, 76.015]],
    ['0.02 mm', [0.02]],
    ['0.02mm 0.03mm', [0.02, 0.03]],
    ['0.02 mm 0.03', [0.02, 0.03]],
    ['20 µm 30 µm', [0.02, 0.03]],
    // Exact: NIST SP 811, appendix B.8, an inch is 25.4 mm.
    ['2 thou', [0.0508]],
    ['.0015 in', [0.0381]],
    ['2 3 4 thou', [0.0508, 0.0762, 0.1016]],
    ['0.006 in. 0.008 in. 0.010 in.', [0.1524, 0.2032, 0.254]],
    ['.002" .003"', [0.0508, 0.0762]],
    ['1-1/2 in', [38.1]],
    ['−0.02 0 +0.01', [-0.02, 0, 0.01]],
  ])('%s', (text, mm) => {
    expect(values(text)).toEqual(mm)
  })

  test.each([
    ['I1 0.14, I2 0.15', [['I1'], ['I2']]],
    ['I1: 0.14 I2=0.15', [['I1'], ['I2']]],
    ['1: 0.14, 2: 0.15', [['1'], ['2']]],
    ['I1,0.14,I2,0.15', [['I1'], ['I2']]],
    ['top x 76.01 y 76.02', [['top', 'x'], ['y']]],
    ['lengthwise 0.02 0.03', [['lengthwise'], ['lengthwise']]],
    ['0.02 front 0.03', [[], ['front']]],
  ])('%s: the words in front', (text, labels) => {
    const read = readReadings(text)
    expect(read.understood && read.value.readings.map(({ label }) => label)).toEqual(labels)
  })

  test('the stretch within which a gap was found', () => {
    const read = readReadings('0.006 in over 6 in')
    expect(read.understood && read.value.readings).toEqual([
      { label: [], mm: 0.1524, typed: '0.006 in', spanMm: 152.4 },
    ])
  })

  test.each([
    ['', 'empty', '', '0.02 0.03 0.05'],
    ['0,02,0,03', 'comma', '0,02,0,03', '0,02 0,03'],
    ['1,2,3', 'comma', '1,2,3', '1 2 3'],
    ['0.02 0,03', 'comma', '0,03', '0.03'],
    ['1,234.5', 'comma', '1,234.5', '1234.5'],
    ['0.02 0.03in 0.04', 'unit', '0.02', '0.02 in'],
    ['2 thou 3', 'unit', '3', '3 thou'],
    ['I1 0.14 I2', 'label', 'I2', '0.14'],
    ['I1', 'number', 'I1', 'I1 0.02'],
    ['0.02x', 'number', '0.02x', '0.02'],
    ['0.0.2', 'number', '0.0.2', '0.0'],
    ['1/0 in', 'number', '1/0in', '1'],
    ['0.13-0.17', 'number', '0.13-0.17', '0.13'],
    ['0.02 over 0 mm', 'number', '0mm', '0.02 over 150 mm'],
    ['0.02 over', 'label', 'over', '0.02'],
    [`${'0.02 '.repeat(201)}`, 'too-many', `${'0.02 '.repeat(201)}`.trim(), '0.02 0.03 0.05'],
  ])('%s is not understood', (text, code, part, nearest) => {
    expect(readReadings(text)).toEqual({ understood: false, code, part, nearest })
    expect(readReadings(nearest).understood).toBe(true)
  })

  test('whatever is typed comes to numbers or to a fault whose nearest form is understood', () => {
    const piece = fc.constantFrom(
      '0.02',
      '0,03',
      '2',
      ',',
      ' ',
      'mm',
      'in',
      '"',
      'thou',
      'I1',
      ':',
      'over',
      '-',
      '.',
      '/',
      '\t',
    )
    fc.assert(
      fc.property(
        fc.array(fc.oneof({ weight: 9, arbitrary: piece }, fc.string({ maxLength: 3 }))),
        (parts) => {
          const read = readReadings(parts.join(''))
          if (read.understood) expect(read.value.readings.every(({ mm }) => Number.isFinite(mm))).toBe(true)
          else expect(readReadings(read.nearest)).toMatchObject({ understood: true })
        },
      ),
      { numRuns: 2000 },
    )
  })
})
