import { describe, expect, test } from 'vitest'
import { formatOf, readFormat } from '../../src/photos/picture-format.ts'
import { jpegOf, pngChunk, pngOf, withApp1 } from '../support/photos/encode.ts'
import { exifBlock } from '../support/photos/exif.ts'
import { drawScene } from '../support/photos/scene.ts'

const scene = drawScene({ width: 80, height: 60 })
const jpeg = jpegOf(scene, { dateTimeOriginal: '2026:11:25 10:11:12' })
const png = pngOf(scene)
const bytes = (text: string) => Uint8Array.from(text, (character) => character.charCodeAt(0))

describe('what a file is by its bytes', () => {
  test.each([
    ['a JPEG', jpeg, { kind: 'picture', format: 'jpeg', width: 80, height: 60 }],
    ['a PNG', png, { kind: 'picture', format: 'png', width: 80, height: 60 }],
    ['a text', bytes('torque 20 Nm'), { kind: 'other' }],
    ['nothing', new Uint8Array(0), { kind: 'other' }],
    // ISO/IEC 14496-12: a box with its length, type, major brand; brands of ISO/IEC 23008-12, annex B.
    ['a HEIF picture', bytes('\0\0\0\x18ftypheic\0\0\0\0mif1heic'), { kind: 'heif' }],
    ['a film', bytes('\0\0\0\x18ftypisom\0\0\0\0isommp41'), { kind: 'other' }],
  ])('%s', (_, file, reading) => {
    expect(readFormat(file)).toEqual(reading)
  })

  test('the first bytes are enough to tell', () => {
    expect([formatOf(jpeg.subarray(0, 32)), formatOf(png.subarray(0, 32))]).toEqual(['jpeg', 'png'])
  })
})

describe('a picture that is not whole', () => {
  // What was appended to the end by the maker of the phone does not make it broken, and neither does its thumbnail make it whole.
  const thumbnail = withApp1(jpeg, Uint8Array.from([...exifBlock({ orientation: 1 }), ...jpegOf(scene)]))

  test.each([
    ['JPEG', jpeg],
    ['PNG', png],
    ['JPEG with a thumbnail', thumbnail],
  ])('a %s cut anywhere is broken', (_, whole) => {
    for (let length = 12; length < whole.length; length += 7) {
      expect(readFormat(whole.subarray(0, length)), `${length} of ${whole.length} bytes`).toEqual({
        kind: 'broken',
        why: 'cut-short',
      })
    }
    expect(readFormat(whole).kind).toBe('picture')
  })

  test('bytes behind the end do not make it broken', () => {
    expect(readFormat(Uint8Array.from([...jpeg, ...bytes('a film of two seconds')])).kind).toBe('picture')
  })

  test('a PNG with a flipped bit anywhere behind its signature', () => {
    for (let at = 8; at < png.length; at += 97) {
      const flipped = png.slice()
      flipped[at] = (flipped[at] ?? 0) ^ 1
      expect(readFormat(flipped).kind, `bit in byte ${at}`).toBe('broken')
    }
  })

  test.each([
    ['a JPEG without a frame', Uint8Array.from([0xff, 0xd8, 0xff, 0xda, 0, 2, 1, 2, 3, 0xff, 0xd9])],
    ['a JPEG that ends at once', Uint8Array.from([0xff, 0xd8, 0xff, 0xd9, 0, 0])],
    ['a segment of no length', Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, 0, 0, 0])],
    [
      'a PNG of no width',
      Uint8Array.from([
        ...png.subarray(0, 8),
        ...pngChunk('IHDR', Uint8Array.from([0, 0, 0, 0, 0, 0, 0, 9, 8, 0, 0, 0, 0])),
        ...pngChunk('IEND', new Uint8Array(0)),
      ]),
    ],
  ])('%s', (_, file) => {
    expect(readFormat(file)).toEqual({ kind: 'broken', why: 'damaged' })
  })
})
