import { crc32 } from 'node:zlib'
import { PNG } from 'pngjs'
import { expect, test } from 'vitest'
import { pngOf } from '../../../src/label/render/png.ts'
import { jsqrCode, zxingSymbols } from '../../support/decode/symbols.ts'
import { codesOf, dotTools, smallLabel } from './drawings.ts'

const tools = await dotTools()

test.each([203, 300, 600])('at %i dots to the inch a PNG is read by two decoders', async (dpi) => {
  for (const code of codesOf(3)) {
    const png = pngOf(smallLabel(code, { dpi, dots: Math.round(dpi / 50) }), dpi, tools)
    const { width, height, data } = PNG.sync.read(Buffer.from(png))
    const picture = { width, height, rgba: new Uint8Array(data) }
    expect(jsqrCode(picture)).toBe(code)
    expect((await zxingSymbols(picture)).map((found) => found.code)).toEqual([code])
  }
})

test.each([
  [203, 7992],
  [300, 11811],
  [600, 23622],
])('at %i dots to the inch it says %i to the metre, and has the size of the label', (dpi, perMetre) => {
  const png = Buffer.from(pngOf(smallLabel('000420103', { dpi, dots: Math.round(dpi / 50) }), dpi, tools))
  const { width, height } = PNG.sync.read(png)
  expect((width / dpi) * 25.4).toBeCloseTo(38.1, 0)
  expect((height / dpi) * 25.4).toBeCloseTo(21.2, 0)
  const [chunk] = chunksOf(png).filter(({ type }) => type === 'pHYs')
  expect([chunk?.data.readUInt32BE(0), chunk?.data.readUInt32BE(4), chunk?.data[8]]).toEqual([
    perMetre,
    perMetre,
    1,
  ])
  for (const { type, data, checksum } of chunksOf(png)) {
    expect(checksum).toBe(crc32(Buffer.concat([Buffer.from(type), data])))
  }
  expect(chunksOf(png).map(({ type }) => type)).toEqual(['IHDR', 'pHYs', 'IDAT', 'IEND'])
})

/** Chunks by W3C PNG, 5.3: length, type, data, checksum. */
function chunksOf(png: Buffer): { type: string; data: Buffer; checksum: number }[] {
  const chunks = []
  for (let at = 8; at < png.length; ) {
    const length = png.readUInt32BE(at)
    const end = at + 8 + length
    chunks.push({
      type: png.toString('latin1', at + 4, at + 8),
      data: png.subarray(at + 8, end),
      checksum: png.readUInt32BE(end),
    })
    at += 12 + length
  }
  return chunks
}
