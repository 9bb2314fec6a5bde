import { describe, expect, test } from 'vitest'
import { type ChosenSymbol, chooseSymbol } from '../../../src/label/symbol/choose-symbol.ts'
import { damages, mishapOf } from '../../support/damage/damages.ts'
import { labelImage, paper } from '../../support/damage/label-image.ts'
import { labelSize, type Print, printedLabel } from '../../support/damage/printed-label.ts'
import { survey, type Tally, together } from '../../support/damage/survey.ts'

const smallest: Print = { version: 1, level: 'H', dots: 4, placement: 'three' }

describe('the damage itself', () => {
  test.each([
    ['oil2', 0.02],
    ['oil10', 0.1],
    ['opaque20', 0.2],
  ] as const)('%s darkens that share of the label', (name, share) => {
    for (let seed = 0; seed < 5; seed++) {
      const blank = { ...labelSize, pixels: new Float32Array(labelSize.width * labelSize.height).fill(paper) }
      const after = mishapOf(damages[name], labelSize, seed).befalls(blank)
      const dark = after.pixels.filter((grey) => grey < paper * 0.85).length
      expect(dark / after.pixels.length).toBeGreaterThan(share - 0.01)
      expect(dark / after.pixels.length).toBeLessThan(share + 0.01)
    }
  })

  test.each(Object.entries(damages))(
    '%s is the same for the same seed, and another for another',
    (_, damage) => {
      const label = labelImage(printedLabel('017004295', smallest))
      const picture = (seed: number) => {
        const mishap = mishapOf(damage, labelSize, seed)
        return mishap.seen(mishap.befalls(label), { left: 0, top: 0, width: 80, height: 60 })
      }
      expect(picture(1)).toEqual(picture(1))
      expect(picture(1).bytes).not.toEqual(picture(2).bytes)
    },
  )
})

describe('three symbols in the corners of a label of 64 x 34 mm at 203 dpi', () => {
  test.each([
    ['oil10', 40, 40],
    ['oil20', 40, 36],
    ['garage20', 20, 18],
  ] as const)('%s: of %d labels %d are read at least, and none wrongly', async (name, labels, least) => {
    const [tally] = await survey([smallest], damages[name], { labels, jsqr: name === 'garage20' })
    expect(tally?.wrong).toBe(0)
    expect(tally?.zxing).toBeGreaterThanOrEqual(least)
  })
})

test.each([16.6, 20.8])(
  'in %s mm the chosen version is read at least as often as the smallest',
  async (side) => {
    const room = { width: side, height: side, symbols: 2 }
    const { version, dots } = chooseSymbol(room, 203) as ChosenSymbol
    const prints = [smallest, { ...smallest, version, dots }].map((print) => ({
      ...print,
      placement: 'two' as const,
    }))
    const oil20 = await survey(prints, damages.oil20, { labels: 8, jsqr: false })
    const garage20 = await survey(prints, damages.garage20, { from: 8, labels: 8, jsqr: false })
    const [plain, chosen] = prints.map((_, way) => together([oil20[way] as Tally, garage20[way] as Tally]))
    expect([plain?.wrong, chosen?.wrong]).toEqual([0, 0])
    expect(chosen?.zxing).toBeGreaterThanOrEqual(plain?.zxing ?? 16)
  },
)
