import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Drive, driveText, readDrive } from '../../src/trade/drive.ts'

describe('drives as they are written', () => {
  test.each<[string, Drive]>([
    ['hex 10', { kind: 'hex', acrossFlatsMm: 10 }],
    ['10 hex', { kind: 'hex', acrossFlatsMm: 10 }],
    ['10mm hex', { kind: 'hex', acrossFlatsMm: 10 }],
    ['10 mm hex', { kind: 'hex', acrossFlatsMm: 10 }],
    ['HEX 10 MM', { kind: 'hex', acrossFlatsMm: 10 }],
    ['hex 5,5', { kind: 'hex', acrossFlatsMm: 5.5 }],
    ['13 AF', { kind: 'hex', acrossFlatsMm: 13 }],
    ['hex 1/2', { kind: 'hex', acrossFlatsMm: 12.7, inch: '1/2' }],
    ['1/2" hex', { kind: 'hex', acrossFlatsMm: 12.7, inch: '1/2' }],
    ['hex 1-1/8', { kind: 'hex', acrossFlatsMm: 28.575, inch: '1-1/8' }],
    ['hex 1⅛', { kind: 'hex', acrossFlatsMm: 28.575, inch: '1-1/8' }],
    ['hex 1"', { kind: 'hex', acrossFlatsMm: 25.4, inch: '1' }],
    ['JIS 12 hex', { kind: 'hex', acrossFlatsMm: 12, series: 'jis' }],
    ['hex 12 JIS', { kind: 'hex', acrossFlatsMm: 12, series: 'jis' }],
    ['allen 5', { kind: 'hex-key', acrossFlatsMm: 5 }],
    ['5 mm allen', { kind: 'hex-key', acrossFlatsMm: 5 }],
    ['hex key 5', { kind: 'hex-key', acrossFlatsMm: 5 }],
    ['socket 5', { kind: 'hex-key', acrossFlatsMm: 5 }],
    ['internal hex 5', { kind: 'hex-key', acrossFlatsMm: 5 }],
    ['hex key 1/4', { kind: 'hex-key', acrossFlatsMm: 6.35, inch: '1/4' }],
    ['T30', { kind: 'hexalobular', size: 30 }],
    ['t30', { kind: 'hexalobular', size: 30 }],
    ['hexalobular 30', { kind: 'hexalobular', size: 30 }],
    ['torx 30', { kind: 'hexalobular', size: 30 }],
    ['torx T30', { kind: 'hexalobular', size: 30 }],
    ['E10', { kind: 'external-hexalobular', size: 10 }],
    ['external hexalobular 10', { kind: 'external-hexalobular', size: 10 }],
    ['12pt 14', { kind: 'twelve-point', acrossFlatsMm: 14 }],
    ['12-point 14', { kind: 'twelve-point', acrossFlatsMm: 14 }],
    ['12 point 14', { kind: 'twelve-point', acrossFlatsMm: 14 }],
    ['14 12pt', { kind: 'twelve-point', acrossFlatsMm: 14 }],
    ['PH2', { kind: 'cross-recess', form: 'H', size: 2 }],
    ['pz 2', { kind: 'cross-recess', form: 'Z', size: 2 }],
    ['cross recess 2', { kind: 'cross-recess', form: 'H', size: 2 }],
    ['slot', { kind: 'slot' }],
    ['slotted', { kind: 'slot' }],
    ['square 8', { kind: 'square', acrossFlatsMm: 8 }],
  ])('%s', (typed, drive) => {
    expect(readDrive(typed)).toEqual({ understood: true, value: drive })
    expect(readDrive(driveText(drive))).toEqual({ understood: true, value: drive })
  })

  test.each<[Drive, string]>([
    [{ kind: 'hex', acrossFlatsMm: 10 }, 'hex 10'],
    [{ kind: 'hex', acrossFlatsMm: 12, series: 'jis' }, 'JIS hex 12'],
    [{ kind: 'hex', acrossFlatsMm: 25.4, inch: '1' }, 'hex 1"'],
    [{ kind: 'hex-key', acrossFlatsMm: 5 }, 'hex key 5'],
    [{ kind: 'hexalobular', size: 30 }, 'T30'],
    [{ kind: 'external-hexalobular', size: 10 }, 'E10'],
    [{ kind: 'twelve-point', acrossFlatsMm: 14 }, '12-point 14'],
    [{ kind: 'cross-recess', form: 'Z', size: 2 }, 'PZ2'],
    [{ kind: 'slot' }, 'slot'],
    [{ kind: 'square', acrossFlatsMm: 8 }, 'square 8'],
  ])('%j is written %s', (drive, text) => {
    expect(driveText(drive)).toBe(text)
  })
})

describe('what is no drive', () => {
  test.each([
    ['', 'empty', 'hex 10'],
    ['hex', 'size', 'hex 10'],
    ['hex key', 'size', 'hex key 5'],
    ['hex 500', 'size', 'hex 10'],
    ['hex 0', 'size', 'hex 10'],
    ['12pt', 'size', '12-point 14'],
    ['torx', 'size', 'T30'],
    ['T31', 'size', 'T30'],
    ['E9', 'size', 'E8'],
    ['PH9', 'size', 'PH4'],
    ['PH', 'size', 'PH2'],
    ['10', 'form', 'hex 10'],
    ['constructor 10', 'form', 'hex 10'],
    ['valve cover', 'form', 'hex 10'],
  ])('%j: %s, nearest %s', (typed, code, nearest) => {
    expect(readDrive(typed)).toEqual({ understood: false, code, part: typed, nearest })
    expect(readDrive(nearest)).toMatchObject({ understood: true })
  })

  test('no written form names a brand, whatever was typed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('torx', 'Torx T', 'e-torx', 'external torx', 'allen'),
        fc.nat(110),
        (word, size) => {
          const reading = readDrive(`${word} ${size}`)
          const written = reading.understood ? driveText(reading.value) : reading.nearest
          expect(written).toMatch(/^(?:T|E|hex key )\d+$/)
        },
      ),
    )
  })
})
