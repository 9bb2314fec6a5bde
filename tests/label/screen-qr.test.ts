import jsqr from 'jsqr'
import qrcode from 'qrcode-terminal'
import { describe, expect, test } from 'vitest'
import { qrMatrix, screenQr } from '../../src/label/screen-qr.ts'
import { seededCodes } from './known-codes.ts'

const codes = seededCodes(200)
const dark: Theme = { foreground: 0xc0, background: 0x10 }
const light: Theme = { foreground: 0x20, background: 0xf0 }

describe('the symbol', () => {
  test('is version 1 with its three finder patterns (ISO/IEC 18004, 6.3.3)', () => {
    for (const code of codes) {
      const matrix = qrMatrix(code)
      expect(matrix.map((row) => row.length)).toEqual(Array(21).fill(21))
      expect(corner(matrix, 0, 0)).toBe(finder)
      expect(corner(matrix, 0, 14)).toBe(finder)
      expect(corner(matrix, 14, 0)).toBe(finder)
    }
  })

  test('has error correction level Q in its format information (ISO/IEC 18004, 7.9.1)', () => {
    for (const code of codes) {
      const row = qrMatrix(code)[8] as boolean[]
      // The first two of the fifteen format bits, unmasked with 101010000010010; Q is 11.
      const level = [Number(row[0]) ^ 1, Number(row[1]) ^ 0]
      expect(level).toEqual([1, 1])
    }
  })

  test('leaves the level of the shared module alone, and does not depend on it', () => {
    const before = qrMatrix('017004295')
    const level = qrcode.error
    qrcode.setErrorLevel('H')
    try {
      expect(qrMatrix('017004295')).toEqual(before)
      expect(qrcode.error).toBe(2)
    } finally {
      Object.assign(qrcode, { error: level })
    }
    qrMatrix('017004295')
    expect(qrcode.error).toBe(level)
  })

  test.each(['', '01700429', '017 0042 95', '0170042955'])('"%s" is no code to draw', (text) => {
    expect(() => qrMatrix(text)).toThrow(RangeError)
    expect(() => screenQr(text, { colour: true })).toThrow(RangeError)
  })
})

describe('an independent decoder, which does not try the negative, reads', () => {
  test.each([
    ['colours on a dark theme', { colour: true }, dark],
    ['colours on a light theme', { colour: true }, light],
    ['colours with invert, which they need not heed', { colour: true, invert: true }, light],
    ['no colours on a dark theme', { colour: false }, dark],
    ['no colours, inverted, on a light theme', { colour: false, invert: true }, light],
  ])('%s', (_, options, theme) => {
    for (const code of codes) expect(decode(rasterise(screenQr(code, options), theme))).toBe(code)
  })

  test.each([
    ['no colours on a light theme', { colour: false }, light],
    ['no colours, inverted, on a dark theme', { colour: false, invert: true }, dark],
  ])('nothing from %s', (_, options, theme) => {
    for (const code of codes.slice(0, 20)) {
      expect(decode(rasterise(screenQr(code, options), theme))).toBeUndefined()
    }
  })
})

describe('the drawing', () => {
  test.each([
    ['colours', { colour: true }, light],
    ['no colours', { colour: false }, dark],
    ['no colours, inverted', { colour: false, invert: true }, light],
  ])('with %s is 29 by 15 with a quiet zone of four modules and the matrix inside', (_, options, theme) => {
    for (const code of codes) {
      const pixels = rasterise(screenQr(code, options), theme)
      expect(pixels).toHaveLength(30)
      const paper = Math.max(...pixels.flat())
      const modules = pixels.map((row) => row.map((pixel) => pixel !== paper))
      const expected = Array.from({ length: 30 }, () => Array(29).fill(false))
      qrMatrix(code).forEach((row, down) => {
        row.forEach((module, across) => {
          ;(expected[down + 4] as boolean[])[across + 4] = module
        })
      })
      expect(modules).toEqual(expected)
    }
  })

  test('sets and resets its colours on every line, and uses no escape sequence without colour', () => {
    for (const line of screenQr('017004295', { colour: true })) {
      expect(line.startsWith('\x1b[38;5;16;48;5;231m')).toBe(true)
      expect(line.endsWith('\x1b[0m')).toBe(true)
    }
    for (const line of screenQr('017004295', { colour: false })) expect(line).toMatch(/^[ ▀▄█]{29}$/)
  })
})

type Theme = { foreground: number; background: number }

const finder = '#######\n#     #\n# ### #\n# ### #\n# ### #\n#     #\n#######'

function corner(matrix: boolean[][], top: number, left: number): string {
  const rows = matrix.slice(top, top + 7).map((row) => row.slice(left, left + 7))
  return rows.map((row) => row.map((module) => (module ? '#' : ' ')).join('')).join('\n')
}

const sequenceOrCell = /\p{Cc}\[[0-9;]*m|\P{Cc}/gu

/** What a terminal shows: a grey value for each half of each cell, two rows a line. */
function rasterise(lines: string[], theme: Theme): number[][] {
  return lines.flatMap((line) => {
    let colours = theme
    const top: number[] = []
    const bottom: number[] = []
    for (const [part] of line.matchAll(sequenceOrCell)) {
      if (part.startsWith('\x1b')) colours = selectGraphicRendition(part, theme, colours)
      else {
        top.push('█▀'.includes(part) ? colours.foreground : colours.background)
        bottom.push('█▄'.includes(part) ? colours.foreground : colours.background)
      }
    }
    return [top, bottom]
  })
}

function selectGraphicRendition(sequence: string, theme: Theme, colours: Theme): Theme {
  const parameters = sequence.slice(2, -1)
  if (parameters === '0') return theme
  const grey = (name: string) => ({ '16': 0x00, '231': 0xff })[name]
  const [, foreground = ''] = /(?:^|;)38;5;([0-9]+)/.exec(parameters) ?? []
  const [, background = ''] = /(?:^|;)48;5;([0-9]+)/.exec(parameters) ?? []
  return {
    foreground: grey(foreground) ?? colours.foreground,
    background: grey(background) ?? colours.background,
  }
}

function decode(pixels: number[][]): string | undefined {
  const scale = 4
  const width = (pixels[0] as number[]).length * scale
  const height = pixels.length * scale
  const image = new Uint8ClampedArray(width * height * 4)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const value = pixels[Math.floor(y / scale)]?.[Math.floor(x / scale)] as number
      image.set([value, value, value, 255], (y * width + x) * 4)
    }
  }
  return jsqr.default(image, width, height, { inversionAttempts: 'dontInvert' })?.data
}
