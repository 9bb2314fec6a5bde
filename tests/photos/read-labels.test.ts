import qrcode from 'qrcode'
import { describe, expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { readLabels, Undecodable } from '../../src/photos/read-labels.ts'
import { jpegOf, pngOf } from '../support/photos/encode.ts'
import { asStored, drawScene, type Scene } from '../support/photos/scene.ts'

const one = labelCode(7, 1)
const two = labelCode(7, 2)
const shown = (scene: Partial<Scene>) => drawScene({ width: 900, height: 700, ...scene })
const label = (code = one, turned = 11) => ({ code, x: 430, y: 340, side: 150, turned })

describe('the labels in a picture', () => {
  test.each([
    ['none', {}, []],
    ['one', { labels: [label()] }, [one]],
    ['one upside down', { labels: [label(one, 187)] }, [one]],
    ['one across', { labels: [label(one, 45)] }, [one]],
    ['one out of focus', { labels: [label()], blur: 3 }, [one]],
    ['one in bad light', { labels: [label()], light: 0.3, noise: 25 }, [one]],
    [
      'the same twice',
      {
        labels: [
          { ...label(), x: 200 },
          { ...label(), x: 680 },
        ],
      },
      [one],
    ],
    [
      'two',
      {
        labels: [
          { ...label(two), x: 200 },
          { ...label(one), x: 680 },
        ],
      },
      [one, two],
    ],
  ])('%s', async (_, scene, codes) => {
    expect(await readLabels(jpegOf(shown(scene)))).toEqual({ codes, unreadable: false })
  })

  test('in a picture of 12 million pixels, a label 30 modules of 12 pixels wide', async () => {
    const scene = drawScene({
      width: 4032,
      height: 3024,
      blur: 2,
      noise: 25,
      labels: [{ code: two, x: 2900, y: 800, side: 250, turned: 33 }],
    })
    expect((await readLabels(jpegOf(scene))).codes).toEqual([two])
  })

  // TIFF 6.0, tag 0x0112: the camera stores what it sees turned or mirrored, and says so in the tag.
  test.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'stored with orientation %i, as JPEG and as PNG',
    async (orientation) => {
      const stored = asStored(
        shown({ width: 500, height: 400, labels: [{ ...label(), x: 240, y: 200 }] }),
        orientation,
      )
      const exif = { orientation }
      expect((await readLabels(jpegOf(stored, exif))).codes).toEqual([one])
      expect((await readLabels(pngOf(stored, exif))).codes).toEqual([one])
    },
  )
})

describe('other symbols', () => {
  test.each(['HTTPS://EXAMPLE.ORG/PART/12', '4006381333931', 'a bag of bolts', '007000186x'])(
    '%s is nobody’s label',
    async (text) => {
      const png = await qrcode.toBuffer(text, { scale: 6 })
      expect(await readLabels(png)).toEqual({ codes: [], unreadable: false })
    },
  )

  test('a label with wrong check digits is none', async () => {
    const wrong = `${one.slice(0, 8)}${(Number(one[8]) + 1) % 10}`
    expect(await readLabels(await qrcode.toBuffer(wrong, { scale: 6 }))).toEqual({
      codes: [],
      unreadable: false,
    })
  })

  test('a symbol that is found and cannot be read is told', async () => {
    const scene = shown({ labels: [label(one, 0)], noise: 0 })
    smear(scene.data, scene.width, { from: 345, to: 485, top: 320, bottom: 415 })
    expect(await readLabels(jpegOf(scene))).toEqual({ codes: [], unreadable: true })
  })
})

test('bytes that are no picture are no answer', async () => {
  await expect(readLabels(new TextEncoder().encode('a text'))).rejects.toThrow(Undecodable)
})

/** A dirty finger over the data of a symbol, leaving the corners that a decoder finds it by. */
function smear(
  data: Uint8Array,
  width: number,
  { from, to, top, bottom }: { from: number; to: number; top: number; bottom: number },
): void {
  for (let y = top; y < bottom; y += 1)
    for (let x = from; x < to; x += 1)
      if (x > 410 || y < 362)
        data.fill(((x * 7 + y * 13) >> 4) % 2 ? 40 : 210, (y * width + x) * 4, (y * width + x) * 4 + 3)
}
