import { createCanvas, loadImage } from '@napi-rs/canvas'
import type { Picture } from '../../../src/label/render/rasteriser.ts'

/** An SVG as Skia draws it, enlarged to so many dots to the inch of the size that it states in millimetres. */
export async function svgPicture(svg: string, dpi: number): Promise<Picture> {
  const [, width, height] = svg.match(/ width="([\d.]+)mm" height="([\d.]+)mm"/) ?? []
  if (width === undefined || height === undefined) throw new Error('The SVG states no size in millimetres')
  const dots = [width, height].map((side) => Math.round((Number(side) * dpi) / 25.4))
  const [wide = 1, high = 1] = dots
  // Skia draws an SVG at the size that it states; only then is it a picture to be scaled.
  const sized = svg.replace(/ width="[\d.]+mm" height="[\d.]+mm"/, ` width="${wide}" height="${high}"`)
  const canvas = createCanvas(wide, high)
  const context = canvas.getContext('2d')
  context.drawImage(await loadImage(Buffer.from(sized)), 0, 0)
  return { width: wide, height: high, rgba: new Uint8Array(context.getImageData(0, 0, wide, high).data) }
}
