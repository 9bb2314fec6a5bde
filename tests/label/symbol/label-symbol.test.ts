import qrcode from 'qrcode'
import { describe, expect, test } from 'vitest'
import {
  labelSymbol,
  modulesOf,
  quietZone,
  type SymbolVersion,
} from '../../../src/label/symbol/label-symbol.ts'
import { jsqrReads, zxingReads } from '../../support/damage/decoders.ts'
import { seededCodes } from '../known-codes.ts'
import { blocksOf, codewordsOf, formatOf, isReedSolomon } from './read-codewords.ts'

const versions: SymbolVersion[] = [1, 2, 3, 4]
const codes = seededCodes(40)

// ISO/IEC 18004, Table 9: codewords in all, and of these for error correction in each block, at level H.
const blocksAtH = {
  1: { codewords: 26, blocks: 1, errorCorrection: 17 },
  2: { codewords: 44, blocks: 1, errorCorrection: 28 },
  3: { codewords: 70, blocks: 2, errorCorrection: 22 },
  4: { codewords: 100, blocks: 4, errorCorrection: 16 },
}

describe('the library that draws the symbols', () => {
  test('has the codewords of the worked example 01234567, version 1-M (ISO/IEC 18004, Annex I)', () => {
    const data = '10 20 0c 56 61 80 ec 11 ec 11 ec 11 ec 11 ec 11'
    // From memory of the annex; a Reed-Solomon coder of our own agrees.
    const errorCorrection = 'a5 24 d4 c1 ed 36 c7 87 2c 55'
    const modules = matrixOf('01234567', 1, 'M')
    expect(hex(codewordsOf(modules))).toBe(`${data} ${errorCorrection}`)
    expect(isReedSolomon(codewordsOf(modules), 10)).toBe(true)
  })

  test('takes as many digits as the standard says, and not one more (ISO/IEC 18004, Table 7)', () => {
    const digits = {
      L: [41, 77, 127, 187],
      M: [34, 63, 101, 149],
      Q: [27, 48, 77, 111],
      H: [17, 34, 58, 82],
    }
    for (const [level, capacities] of Object.entries(digits)) {
      for (const [at, capacity] of capacities.entries()) {
        expect(matrixOf('7'.repeat(capacity), at + 1, level as 'L')).toHaveLength(21 + 4 * at)
        expect(() => matrixOf('7'.repeat(capacity + 1), at + 1, level as 'L')).toThrow()
      }
    }
  })
})

describe.each(versions)('a label symbol of version %d', (version) => {
  const { codewords, blocks, errorCorrection } = blocksAtH[version]

  test('has the size of its version and level H', () => {
    for (const code of codes) {
      const modules = labelSymbol(code, version)
      expect(modules.map((row) => row.length)).toEqual(Array(modulesOf(version)).fill(17 + 4 * version))
      expect(formatOf(modules).level).toBe('H')
    }
  })

  test('holds nine digits in numeric mode, and its error correction is right', () => {
    for (const code of codes) {
      const words = codewordsOf(labelSymbol(code, version))
      const parts = blocksOf(words.slice(0, codewords), blocks)
      const data = parts.flatMap((block) => block.slice(0, -errorCorrection))
      expect(hex(data)).toBe(hex(numericData(code, data.length)))
      for (const block of parts) expect(isReedSolomon(block, errorCorrection)).toBe(true)
    }
  })

  test('is read by two decoders that share no code with what drew it', async () => {
    for (const code of codes) {
      const picture = pictureOf(labelSymbol(code, version), 4)
      expect(await zxingReads(picture)).toEqual([code])
      expect(jsqrReads(picture)).toEqual([code])
    }
  })
})

test.each([
  ['01700429', 1],
  ['0170042955', 1],
  ['017 0042 95', 1],
  ['٠١٧٠٠٤٢٩٥', 1],
  ['017004295', 0],
  ['017004295', 5],
  ['017004295', 1.5],
  ['017004295', Number.NaN],
])('"%s" in version %d is no label symbol', (code, version) => {
  expect(() => labelSymbol(code, version)).toThrow(RangeError)
})

function matrixOf(digits: string, version: number, level: 'L' | 'M' | 'Q' | 'H'): boolean[][] {
  const { modules } = qrcode.create([{ data: digits, mode: 'numeric' }], {
    version,
    errorCorrectionLevel: level,
  })
  const line = Array.from({ length: modules.size }, (_, at) => at)
  return line.map((row) => line.map((column) => modules.get(row, column) === 1))
}

/** Mode 0001, the count in ten bits, three digits in ten bits each, terminator, pad codewords (7.4.3, 7.4.10). */
function numericData(code: string, length: number): number[] {
  const bits = (value: number, width: number) => value.toString(2).padStart(width, '0')
  const groups = [0, 3, 6].map((at) => bits(Number(code.slice(at, at + 3)), 10))
  const stream = `0001${bits(code.length, 10)}${groups.join('')}0000`
  const padded = stream.padEnd(Math.ceil(stream.length / 8) * 8, '0')
  const words = (padded.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2))
  for (let at = 0; words.length < length; at++) words.push(at % 2 === 0 ? 0xec : 0x11)
  return words
}

function hex(words: number[]): string {
  return words.map((word) => word.toString(16).padStart(2, '0')).join(' ')
}

function pictureOf(modules: boolean[][], scale: number) {
  const side = (modules.length + 2 * quietZone) * scale
  const bytes = new Uint8ClampedArray(side * side)
  for (let place = 0; place < bytes.length; place++) {
    const row = Math.floor(place / side / scale) - quietZone
    const column = Math.floor((place % side) / scale) - quietZone
    bytes[place] = modules[row]?.[column] ? 0 : 255
  }
  return { width: side, height: side, bytes }
}
