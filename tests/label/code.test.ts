import { Mod97_10 } from '@konfirm/iso7064'
import { mod97_10 } from 'cdigit'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  checkDigits,
  groupedCode,
  LAST_CONTAINER,
  labelCode,
  MACHINE_NUMBER,
  nearCodes,
  readCode,
  splitTail,
  stepNumber,
  stepOf,
} from '../../src/label/code.ts'
import { anyCode, seededCodes } from './known-codes.ts'
import { additions, doubleSubstitutions, droppings, substitutions, swaps, twins } from './slips.ts'

const digits = (length: { minLength: number; maxLength: number }) =>
  fc.string({ unit: fc.constantFrom(...'0123456789'), ...length })

describe('check digits', () => {
  test.each([
    ['794', '44', "ISO/IEC 7064's own example 79444, from memory; two libraries agree"],
    ['4354111611551114', '31', 'from memory of a library manual; two libraries agree'],
    ['99991234567890121414', '90', 'from memory of a library manual; two libraries agree'],
  ])('%s has %s (%s)', (body, check) => {
    expect(checkDigits(body)).toBe(check)
    expect(mod97_10.compute(body)).toBe(check)
    expect(Mod97_10.checksum(body)).toBe(check)
  })

  test('two reference libraries agree on any digits', () => {
    fc.assert(
      fc.property(digits({ minLength: 1, maxLength: 30 }), (body) => {
        expect(checkDigits(body)).toBe(mod97_10.compute(body))
        expect(checkDigits(body)).toBe(Mod97_10.checksum(body))
      }),
    )
  })

  test('the whole has remainder 1 modulo 97, the condition of ISO/IEC 7064', () => {
    fc.assert(
      fc.property(digits({ minLength: 1, maxLength: 40 }), (body) => {
        expect(BigInt(body + checkDigits(body)) % 97n).toBe(1n)
      }),
    )
  })

  test.each(['', '12a', '1 2', '-1', '１'])('"%s" is no string of digits', (text) => {
    expect(() => checkDigits(text)).toThrow(RangeError)
  })
})

describe('a label code', () => {
  test('is job, container and check digits', () => {
    expect(labelCode(17, 42)).toBe('017004295')
    expect(labelCode(1, 1)).toBe(`0010001${mod97_10.compute('0010001')}`)
    expect(labelCode(999, 9999)).toBe(`9999999${mod97_10.compute('9999999')}`)
    expect(groupedCode('017004295')).toBe('017 0042 95')
  })

  test.each([
    [0, 1],
    [1000, 1],
    [1, 0],
    [1, 10_000],
    [1.5, 1],
    [1, Number.NaN],
    [-1, 1],
  ])('job %d, container %d does not exist', (job, container) => {
    expect(() => labelCode(job, container)).toThrow(RangeError)
  })

  test.each(['', '01700429', '0170042955', '017 0042 95'])('"%s" cannot be grouped', (text) => {
    expect(() => groupedCode(text)).toThrow(RangeError)
  })
})

describe('reading a code', () => {
  test.each([
    ['bare', '017004295'],
    ['grouped', '017 0042 95'],
    ['with hyphens', '017-0042-95'],
    ['with non-breaking hyphens', '017‑0042‑95'],
    ['with dots', '017.0042.95'],
    ['with one separator', '017 004295'],
    ['with wide separators', '017  -  0042 .. 95'],
    ['with tabs', '017\t0042\t95'],
    ['with space around', '  017004295\r\n'],
    ['with a symbology identifier (ISO/IEC 15424)', ']Q3017004295'],
    ['with another and a group separator', ']C1\x1d017004295\x1d'],
    ['with NULs', '\x000\x001\x0070\x0004295'],
    ['full-width', '０１７　００４２　９５'],
    ['Arabic-Indic', '٠١٧٠٠٤٢٩٥'],
    ['grouped in other places', '0170 042 95'],
  ])('%s', (_, text) => {
    expect(readCode(text)).toEqual({ kind: 'code', job: 17, container: 42, code: '017004295' })
  })

  test.each([
    ['a wrong digit', '017004395', '017004395'],
    ['two digits swapped', '071 0042 95', '071004295'],
    ['a digit dropped', '17 0042 95', '17004295'],
    ['the check digits left out', '017 0042', '0170042'],
    ['a digit doubled', '0170044295', '0170044295'],
    ['two digits added', '01170044295', '01170044295'],
    [
      'right check digits, but no job 000',
      `0000042${checkDigits('0000042')}`,
      `0000042${checkDigits('0000042')}`,
    ],
    ['right check digits, but no container 0000', `0170000${checkDigits('0170000')}`, '017000027'],
  ])('misread: %s', (_, text, expected) => {
    expect(readCode(text)).toEqual({ kind: 'misread', digits: expected })
  })

  test('check digits 98 for 01 leave the remainder 1 too, but are misread', () => {
    const code = seededCodes(1000).find((each) => each.endsWith('01')) as string
    const twin = `${code.slice(0, 7)}98`
    expect(BigInt(twin) % 97n).toBe(1n)
    expect(readCode(twin)).toEqual({ kind: 'misread', digits: twin })
  })

  test.each([
    ['empty', ''],
    ['a choice', '2'],
    ['a container number', '0042'],
    ['six digits', '170042'],
    ['a number on a parts box', '4006381333931'],
    ['twelve digits', '017004295017'],
    ['words', 'valve cover'],
    ['words before the code', 'cover 017004295'],
    ['words after it', '017004295 cover'],
    ['measured values', '0.045 0.050 0.048'],
    ['four groups', '01 7 0042 95'],
    ['a sign', '-017004295'],
    ['a tolerance', '017004295±1'],
    ['a fraction, which NFKC spells out', '01700429½'],
  ])('no code: %s', (_, text) => {
    expect(readCode(text)).toEqual({ kind: 'not-a-code' })
  })

  test('every code reads back, grouped or not', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 1, max: 9999 }), (job, container) => {
        const code = labelCode(job, container)
        expect(readCode(code)).toEqual({ kind: 'code', job, container, code })
        expect(readCode(groupedCode(code))).toEqual({ kind: 'code', job, container, code })
      }),
    )
  })

  test('any text is read without a throw, and a code that comes out is right', () => {
    const odd = fc.string({ unit: fc.constantFrom(...'0123456789 -.]Q3\0\x1d\t٣３²½é🔩') })
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), odd), (text) => {
        const reading = readCode(text)
        if (reading.kind === 'code') expect(reading.code).toBe(labelCode(reading.job, reading.container))
        if (reading.kind === 'misread') expect(reading.digits).toMatch(/^[0-9]{7,11}$/)
      }),
    )
  })
})

describe('slips over 1,000 codes', () => {
  const codes = seededCodes(1000)
  const isMisread = (text: string) => readCode(text).kind === 'misread'

  test('every single wrong digit is caught', () => {
    const slips = codes.flatMap(substitutions)
    expect(slips).toHaveLength(1000 * 9 * 9)
    expect(slips.filter((slip) => !isMisread(slip))).toEqual([])
  })

  test('every swap of neighbours is caught', () => {
    const slips = codes.flatMap((code) => swaps(code, 1))
    expect(slips.length).toBeGreaterThan(6000)
    expect(slips.filter((slip) => !isMisread(slip))).toEqual([])
  })

  test('every swap around a third digit is caught', () => {
    const slips = codes.flatMap((code) => swaps(code, 2))
    expect(slips.length).toBeGreaterThan(5000)
    expect(slips.filter((slip) => !isMisread(slip))).toEqual([])
  })

  test('every twin slip (11 for 22) is caught', () => {
    const slips = codes.flatMap(twins)
    expect(slips.length).toBeGreaterThan(6000)
    expect(slips.filter((slip) => !isMisread(slip))).toEqual([])
  })

  test('of two wrong digits about one in 97 passes, no more', () => {
    const slips = codes.slice(0, 100).flatMap(doubleSubstitutions)
    const passed = slips.filter((slip) => !isMisread(slip)).length
    expect(slips).toHaveLength(100 * 36 * 81)
    expect(passed).toBeGreaterThan(0)
    expect(passed / slips.length).toBeLessThan(0.0125)
  })
})

describe('near codes', () => {
  const known = ['017004295', '017004392', '017004489', '042001874']

  test.each([
    ['a wrong digit', '017004295', '017804295'],
    ['neighbours swapped', '042001874', '042001847'],
    ['digits swapped around a third', '042001874', '042001478'],
    ['a digit dropped', '042001874', '04200184'],
    ['a digit doubled', '042001874', '0420018874'],
    ['a digit added', '042001874', '0427001874'],
    ['the check digits left out', '042001874', '0420018'],
    ['two wrong digits', '042001874', '042991874'],
  ])('%s', (_, code, misread) => {
    expect(nearCodes(misread, known)[0]).toBe(code)
  })

  test('the likelier slip comes first, and equal ones keep their order', () => {
    expect(nearCodes('111111111', ['221111111', '211111111', '112211111', '121111111'])).toEqual([
      '211111111',
      '121111111',
      '221111111',
      '112211111',
    ])
    expect(nearCodes('123456789', ['193456780', '143256789', '213456789', '123456780'])).toEqual([
      '123456780',
      '213456789',
      '143256789',
      '193456780',
    ])
  })

  test('five at most, none for a far one', () => {
    const alike = ['2', '3', '4', '5', '6', '7'].map((digit) => `11111111${digit}`)
    expect(nearCodes('111111111', alike)).toEqual(alike.slice(0, 5))
    expect(nearCodes('999999999', known)).toEqual([])
    expect(nearCodes('01700', known)).toEqual([])
    expect(nearCodes('', known)).toEqual([])
  })

  test('whatever single slip is made, the code meant is among them', () => {
    const slips = fc.constantFrom(
      substitutions,
      (code: string) => swaps(code, 1),
      (code: string) => swaps(code, 2),
      droppings,
      additions,
    )
    fc.assert(
      fc.property(anyCode, slips, fc.nat(), (code, slip, pick) => {
        const all = slip(code)
        fc.pre(all.length > 0)
        expect(nearCodes(all[pick % all.length] as string, [code])).toEqual([code])
      }),
    )
  })

  test('never a code further than two wrong digits away', () => {
    fc.assert(
      fc.property(anyCode, anyCode, (code, other) => {
        const wrong = [...code].filter((digit, place) => digit !== other[place]).length
        expect(nearCodes(other, [code]).length).toBe(wrong <= 2 ? 1 : 0)
      }),
    )
  })
})

describe('a code at the end of a line', () => {
  test.each([
    ['burst into a word', '8 M6x25 hex 10 valve cov017004295', '8 M6x25 hex 10 valve cov'],
    ['burst after a digit', '8 M6x25017004295', '8 M6x25'],
    ['burst after the same digits', '8 M6x017017004295', '8 M6x017'],
    ['grouped', '8 M6x25 hex 10 017 0042 95', '8 M6x25 hex 10 '],
    ['grouped, after a digit', '8 M6x25017 0042 95', '8 M6x25'],
    ['grouped with hyphens', 'cover 017-0042-95', 'cover '],
    ['with a symbology identifier', 'valve cov]Q3017004295', 'valve cov'],
    ['with an identifier and a group separator', 'valve cov]C1\x1d017004295\x1d', 'valve cov'],
    ['alone', '017004295', ''],
    ['with space after', 'cover 017004295  ', 'cover '],
    ['after characters outside the first plane', '🔩🔩 cov017004295', '🔩🔩 cov'],
    ['after characters that NFKC makes longer', 'ﷺ ½ ﬃ 017004295', 'ﷺ ½ ﬃ '],
    ['after words that NFKC would change', '5 cm²017004295', '5 cm²'],
    ['full-width', '蓋０１７００４２９５', '蓋'],
    ['mathematical digits', 'cov𝟎𝟏𝟕𝟎𝟎𝟒𝟐𝟗𝟓', 'cov'],
    ['after another code', '017004295017004295', '017004295'],
  ])('%s', (_, line, words) => {
    expect(splitTail(line)).toEqual({ words, code: '017004295' })
  })

  test.each([
    ['words alone', '8 M6x25 hex 10 valve cover'],
    ['wrong check digits', 'valve cov017004235'],
    ['a code that is not at the end', '017004295 cover'],
    ['eight digits', 'cover 17004295'],
    ['groups of other lengths', 'cover 0170 042 95'],
    ['no job 000', `cover 0000042${checkDigits('0000042')}`],
    ['nothing', ''],
  ])('none: %s', (_, line) => {
    expect(splitTail(line)).toBeNull()
  })

  test('whatever stands before it, words and code come apart again', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), anyCode, fc.boolean(), (words, code, grouped) => {
        fc.pre(!/\][A-Za-z][0-9A-Za-z]$/.test(words))
        expect(splitTail(words + (grouped ? groupedCode(code) : code))).toEqual({ words, code })
      }),
    )
  })
})

describe('numbers that are no containers', () => {
  test('follow the last container: the machine, then its steps', () => {
    expect([LAST_CONTAINER, MACHINE_NUMBER, stepNumber(1), stepNumber(999)]).toEqual([8999, 9000, 9001, 9999])
    expect(readCode(labelCode(17, stepNumber(4)))).toMatchObject({ kind: 'code', job: 17, container: 9004 })
  })

  test('a step and its number are each found from the other', () => {
    for (let step = 1; step <= 999; step += 1) expect(stepOf(stepNumber(step))).toBe(step)
    for (const number of [0, 1, 8999, 9000, 10_000, 9001.5, Number.NaN]) expect(stepOf(number)).toBeNull()
  })

  test.each([0, 1000, 1.5, -1, Number.NaN])('step %d has none', (step) => {
    expect(() => stepNumber(step)).toThrow(RangeError)
  })
})
