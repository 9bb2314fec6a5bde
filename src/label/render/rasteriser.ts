import { initWasm, Resvg } from '@resvg/resvg-wasm'

/** Turns SVG into dots. */
export interface Rasteriser {
  /** The picture in RGBA, four bytes a dot, row by row. */
  pixels(svg: string): Picture
  /** The picture as a PNG file. */
  png(svg: string): Uint8Array
}

/** `rgba` holds four bytes a dot, row by row from the top left. */
export interface Picture {
  width: number
  height: number
  rgba: Uint8Array
}

/** Starts the rasteriser. Its program is given once; later calls wait for the same start. */
export async function openRasteriser(wasm: Uint8Array): Promise<Rasteriser> {
  // The view may lie in a larger buffer; the types ask for one that is not shared.
  started ??= initWasm(new Uint8Array(wasm))
  await started
  return {
    pixels: (svg) => drawn(svg, ({ width, height, pixels }) => ({ width, height, rgba: pixels })),
    png: (svg) => drawn(svg, (image) => image.asPng()),
  }
}

let started: Promise<void> | undefined

type RenderedImage = ReturnType<InstanceType<typeof Resvg>['render']>

// What lies in the memory of the program is not collected: it has to be given back.
function drawn<T>(svg: string, take: (image: RenderedImage) => T): T {
  const resvg = new Resvg(svg, { font: { loadSystemFonts: false } })
  const image = resvg.render()
  const taken = take(image)
  image.free()
  resvg.free()
  return taken
}
