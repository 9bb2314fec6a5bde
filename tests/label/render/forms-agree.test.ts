import { expect, test } from 'vitest'
import { bitmapOf } from '../../../src/label/render/bitmap.ts'
import { pdfOf } from '../../../src/label/render/pdf.ts'
import type { Picture } from '../../../src/label/render/rasteriser.ts'
import { svgOf } from '../../../src/label/render/svg.ts'
import { pdfPicture } from '../../support/decode/pdf.ts'
import { pictureOfDots } from '../../support/decode/picture.ts'
import { svgPicture } from '../../support/decode/svg.ts'
import { dotTools, page, smallLabel } from './drawings.ts'

const tools = await dotTools()

test('a label looks the same as SVG, as PDF and in dots', async () => {
  const { shapes } = smallLabel('000420103', { text: 'Ω-Clip größer, кольцо x̄ AVAT fi' })
  const label = page(80, 40, [
    ...shapes,
    { kind: 'box', x: 2, y: 25, width: 40, height: 12, corner: 2, line: 0.4 },
    { kind: 'box', x: 45, y: 25, width: 30, height: 8, line: 0, filled: true },
    { kind: 'text', x: 47, y: 31, size: 5, weight: 'strong', text: 'STOP', reversed: true },
    { kind: 'text', x: 76, y: 2, size: 3, weight: 'plain', text: 'turned', turn: 90 },
    { kind: 'circle', x: 10, y: 31, radius: 4, line: 0.5 },
    { kind: 'line', from: { x: 16, y: 31 }, to: { x: 40, y: 31 }, width: 0.5, dashed: true },
  ])
  const about = { typeface: tools.typeface, title: '', made: new Date(0) }
  const dots = pictureOfDots(bitmapOf(label, 300, tools))
  // What differs are dots along the edges, where each engine rounds in its own way.
  expect(overlap(dots, await svgPicture(svgOf(label, tools.typeface), 300))).toBeGreaterThan(0.97)
  expect(overlap(dots, await pdfPicture(await pdfOf([label], about), 300))).toBeGreaterThan(0.95)
})

/** Dark dots in common, as a share of the dark dots of both (the coefficient of Dice). */
function overlap(one: Picture, other: Picture): number {
  expect([one.width, one.height]).toEqual([other.width, other.height])
  let [common, dark] = [0, 0]
  for (let at = 0; at < one.rgba.length; at += 4) {
    const both = [one, other].filter(({ rgba }) => (rgba[at] ?? 255) < 128).length
    dark += both
    if (both === 2) common++
  }
  return (2 * common) / dark
}
