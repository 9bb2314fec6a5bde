import { createCanvas, GlobalFonts } from '@napi-rs/canvas'
import { beforeAll, describe, expect, test } from 'vitest'
import { drawableText, openTypeface } from '../../src/label/typeface.ts'
import { typeface } from '../../src/print/fonts.ts'

const fonts = typeface()

describe('widths', () => {
  // Another engine sets the same words: Skia with HarfBuzz.
  const canvas = createCanvas(10, 10).getContext('2d')
  beforeAll(() => {
    GlobalFonts.register(Buffer.from(fonts.files.plain), 'putback plain')
    GlobalFonts.register(Buffer.from(fonts.files.strong), 'putback strong')
  })

  test.each([
    'BAG 3',
    '8 × valve cover bolts M6x25 hex 8',
    'AVATAR To Wa. LT',
    'finger, office, baffle',
    'Überwurfmutter, Dichtring ½" größer',
    'κεφαλή κυλίνδρου Άξονας',
    'болт крышки ГБЦ Ёлка',
    'x̄ ạ̄',
  ])('%s', (text) => {
    for (const weight of ['plain', 'strong'] as const) {
      canvas.font = `100px 'putback ${weight}'`
      expect(fonts.widthOf(text, 100, weight)).toBeCloseTo(canvas.measureText(text).width, 0)
    }
  })

  test('grow with the size, and the outline stays within them', () => {
    expect(fonts.widthOf('MM', 6, 'plain')).toBeCloseTo(2 * fonts.widthOf('MM', 3, 'plain'), 9)
    const numbers = fonts.outlineOf('HiH', 10, 'strong').match(/-?[\d.]+/g) ?? []
    const across = numbers.filter((_, n) => n % 2 === 0).map(Number)
    expect(Math.min(...across)).toBeGreaterThan(0)
    expect(Math.max(...across)).toBeLessThan(fonts.widthOf('HiH', 10, 'strong'))
  })
})

describe('what cannot be drawn', () => {
  test.each([
    ['Müller, ελληνικά, кириллица, Ø 8 ± 0,1 → ✓ ≤ 5 µm', []],
    ['x̄ and ạ̄', []],
    ['漢字 and 漢', ['漢', '字']],
    ['🔧', ['🔧']],
    ['שלום', ['ש', 'ל', 'ו', 'ם']],
    ['مفتاح', ['م', 'ف', 'ت', 'ا', 'ح']],
    ['a\u202eb', ['\u202e']],
    ['a\u200bb\ufe0f', ['\u200b', '\ufe0f']],
    ['\x1b[2J\n', ['\x1b', '\n']],
    ['\ue000\ud800', ['\ue000', '\ud800']],
    ['Z\u0300\u0301\u0302', ['\u0302']],
  ])('%j lacks %j', (text, missing) => {
    expect(fonts.missing(text)).toEqual(missing)
  })

  test('every character of the first two planes has an outline or is named, spaces aside', () => {
    const unseen: string[] = []
    for (let point = 0; point < 0x20000; point++) {
      const character = String.fromCodePoint(point)
      if (fonts.missing(character).length > 0 || /^\p{Zs}$/u.test(character)) continue
      for (const weight of ['plain', 'strong'] as const) {
        if (fonts.outlineOf(character, 1, weight) === '') unseen.push(point.toString(16))
      }
    }
    expect(unseen).toEqual([])
  })

  test('a replacement character stands in its place', () => {
    expect(drawableText('a\u202eb 漢', fonts)).toBe('a\ufffdb \ufffd')
    expect(drawableText('plain', fonts)).toBe('plain')
  })
})

test('what is no font is refused', () => {
  const text = new TextEncoder().encode('not a font at all')
  expect(() => openTypeface(fonts.files.plain, text)).toThrow()
})
