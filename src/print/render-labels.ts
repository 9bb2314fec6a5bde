import { type Drawing, moved } from '../label/drawing.ts'
import { bitmapOf } from '../label/render/bitmap.ts'
import { labelRollBytes } from '../label/render/label-roll.ts'
import { wholeDots } from '../label/render/on-dots.ts'
import { pngOf } from '../label/render/png.ts'
import { openRasteriser } from '../label/render/rasteriser.ts'
import { receiptRollBytes } from '../label/render/receipt-roll.ts'
import { svgOf } from '../label/render/svg.ts'
import type { PrintTrouble } from '../words/printing.ts'
import { type Choice, tooManyForPicture } from './choose-print.ts'
import { rasteriserWasm, typeface } from './fonts.ts'

/** Labels as a picture of one, or in the commands of a roll printer. */
export async function renderLabels(
  labels: readonly Drawing[],
  choice: Choice,
): Promise<Uint8Array | PrintTrouble> {
  const tooMany = tooManyForPicture(choice, labels.length)
  if (tooMany) return tooMany
  const { form, dpi, copies, shift } = choice
  const [only] = labels
  if (form === 'svg' && only) return new TextEncoder().encode(svgOf(only, typeface()))
  const tools = { typeface: typeface(), rasteriser: await openRasteriser(rasteriserWasm()) }
  if (form === 'png' && only) return pngOf(only, dpi, tools)
  const bitmaps = labels.map((label) => bitmapOf(shifted(label, shift, dpi), dpi, tools))
  return form === 'receipt-roll' ? receiptRollBytes(bitmaps, { copies }) : labelRollBytes(bitmaps, { copies })
}

/** By whole dots, so that the modules of a symbol stay on theirs. */
function shifted(label: Drawing, { x, y }: Choice['shift'], dpi: number): Drawing {
  const [right, down] = [x, y].map((length) => (wholeDots(length, dpi) * 25.4) / dpi) as [number, number]
  return right === 0 && down === 0 ? label : moved(label, right, down)
}
