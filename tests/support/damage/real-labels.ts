import type { LabelContent } from '../../../src/label/label-content.ts'
import { layOut } from '../../../src/label/layout/lay-out.ts'
import { bitmapOf, type DotTools } from '../../../src/label/render/bitmap.ts'
import { openRasteriser } from '../../../src/label/render/rasteriser.ts'
import { rasteriserWasm, typeface } from '../../../src/print/fonts.ts'
import { seededCodes } from '../../label/known-codes.ts'
import { type Damage, mishapOf } from './damages.ts'
import type { GreyImage } from './grey-image.ts'
import { ink, paper } from './label-image.ts'
import { labelSize, printedLabel } from './printed-label.ts'
import { type Reading, readingAfter } from './readings.ts'

/** A label of 64 by 34 mm as the product lays it out for 203 dpi. */
export function realLabel(content: LabelContent) {
  const laid = layOut(content, { width: 64, height: 34 }, { typeface: typeface(), dpi: 203 })
  if (!laid.ok) throw new Error(laid.refusal.code)
  return laid.drawing
}

/** What is read of so many such labels, each with a code of its own, after a damage. */
export async function realReadings(
  content: LabelContent,
  damage: Damage,
  labels: number,
): Promise<Reading[]> {
  const tools = { typeface: typeface(), rasteriser: await openRasteriser(rasteriserWasm()) }
  const readings: Reading[] = []
  for (const [seed, code] of seededCodes(labels).entries()) {
    const image = printed({ ...content, code }, tools)
    const symbols = printedLabel(code, { version: 1, level: 'H', dots: 4, placement: 'three' })
    readings.push(
      await readingAfter(mishapOf(damage, labelSize, seed), code, symbols, { jsqr: false, image }),
    )
  }
  return readings
}

function printed(content: LabelContent, tools: DotTools): GreyImage {
  const { width, height, rowBytes, dots } = bitmapOf(realLabel(content), 203, tools)
  const pixels = new Float32Array(labelSize.width * labelSize.height).fill(paper)
  for (let y = 0; y < Math.min(labelSize.height, height); y++) {
    for (let x = 0; x < Math.min(labelSize.width, width); x++) {
      const isDark = ((dots[y * rowBytes + (x >> 3)] ?? 0) & (0x80 >> (x & 7))) !== 0
      if (isDark) pixels[y * labelSize.width + x] = ink
    }
  }
  return { ...labelSize, pixels }
}
