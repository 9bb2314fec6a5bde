import type { Drawing } from '../label/drawing.ts'
import { bitmapOf } from '../label/render/bitmap.ts'
import { labelRollBytes } from '../label/render/label-roll.ts'
import { pngOf } from '../label/render/png.ts'
import { openRasteriser } from '../label/render/rasteriser.ts'
import { receiptRollBytes } from '../label/render/receipt-roll.ts'
import { svgOf } from '../label/render/svg.ts'
import type { PrintTrouble } from '../words/printing.ts'
import type { Choice } from './choose-print.ts'
import { rasteriserWasm, typeface } from './fonts.ts'

/** Labels as a picture of one, or in the commands of a roll printer. */
export async function renderLabels(
  labels: readonly Drawing[],
  { form, dpi, copies }: Choice,
): Promise<Uint8Array | PrintTrouble> {
  const [only] = labels
  if (form === 'svg' || form === 'png') {
    if (labels.length !== 1 || !only) return { code: 'one-label-only', count: labels.length, form }
  }
  if (form === 'svg' && only) return new TextEncoder().encode(svgOf(only, typeface()))
  const tools = { typeface: typeface(), rasteriser: await openRasteriser(rasteriserWasm()) }
  if (form === 'png' && only) return pngOf(only, dpi, tools)
  const bitmaps = labels.map((label) => bitmapOf(label, dpi, tools))
  return form === 'receipt-roll' ? receiptRollBytes(bitmaps, { copies }) : labelRollBytes(bitmaps, { copies })
}
