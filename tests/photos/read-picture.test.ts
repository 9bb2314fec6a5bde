import { describe, expect, test, vi } from 'vitest'
import { readPicture } from '../../src/photos/read-picture.ts'
import { jpegOf, pngChunk, pngOf, withApp1 } from '../support/photos/encode.ts'
import { type ExifFacts, exifBlock } from '../support/photos/exif.ts'
import { drawScene } from '../support/photos/scene.ts'

const scene = drawScene({ width: 80, height: 60 })
const facts: ExifFacts = {
  orientation: 6,
  dateTimeOriginal: '2026:11:25 10:11:12',
  offsetTimeOriginal: '+02:00',
  subSecTimeOriginal: '345',
  make: 'a camera',
}
const taken = { local: '2026-11-25T10:11:12', fraction: '345', offset: '+02:00' }

describe('the capture time', () => {
  test.each([
    ['in a JPEG', jpegOf(scene, facts), 'jpeg'],
    ['in a JPEG with the other byte order', jpegOf(scene, { ...facts, bigEndian: true }), 'jpeg'],
    ['in a PNG', pngOf(scene, facts), 'png'],
  ] as const)(
    '%s is kept as the text that it is, in whatever time zone this runs',
    async (_, file, format) => {
      for (const zone of ['UTC', 'Pacific/Auckland', 'America/New_York']) {
        vi.stubEnv('TZ', zone)
        expect(await readPicture(file)).toEqual({ kind: 'picture', format, taken })
      }
      vi.unstubAllEnvs()
    },
  )

  const block = exifBlock(facts)
  test.each([
    ['there is no EXIF block', jpegOf(scene)],
    ['the block has no time', jpegOf(scene, { orientation: 1 })],
    ['the time is hostile', jpegOf(scene, { ...facts, dateTimeOriginal: '\x1b[2J\x1b]0;gone\x07' })],
    ['the block is cut short', withApp1(jpegOf(scene), block.subarray(0, 40))],
    ['the block is empty', withApp1(jpegOf(scene), new Uint8Array(0))],
    [
      'every byte of the block is 255',
      withApp1(
        jpegOf(scene),
        block.map(() => 0xff),
      ),
    ],
  ])('none where %s', async (_, file) => {
    expect(await readPicture(file)).toEqual({ kind: 'picture', format: 'jpeg', taken: null })
  })

  test('a block with one byte wrong never ends in an error', async () => {
    const plain = jpegOf(scene)
    for (let at = 0; at < block.length; at += 1) {
      for (const value of [0x00, 0x7f, 0xff]) {
        const wrong = block.slice()
        wrong[at] = value
        expect((await readPicture(withApp1(plain, wrong))).kind, `byte ${at}: ${value}`).toBe('picture')
      }
    }
  })
})

test('a small file that would unfold to more than memory holds is not decoded', async () => {
  const size = Buffer.alloc(13)
  size.writeUInt32BE(100_000, 0)
  size.writeUInt32BE(100_000, 4)
  size.set([8, 2, 0, 0, 0], 8)
  const bomb = Uint8Array.from([
    ...pngOf(scene).subarray(0, 8),
    ...pngChunk('IHDR', size),
    ...pngChunk('IEND', new Uint8Array(0)),
  ])
  expect(await readPicture(bomb)).toEqual({ kind: 'broken', why: 'too-many-pixels' })
})
