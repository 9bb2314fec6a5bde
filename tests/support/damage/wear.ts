import type { Chance } from './chance.ts'
import { type GreyImage, sample } from './grey-image.ts'
import { ink, paper } from './label-image.ts'

/** A thumb wiped over the print: ink is dragged one way over `reach` dots and grows paler with the distance. */
export function smeared(image: GreyImage, reach: number, chance: Chance): GreyImage {
  const way = chance.between(0, 2 * Math.PI)
  const strength = chance.between(0.3, 0.6)
  const [dx, dy] = [Math.cos(way), Math.sin(way)]
  const out = { ...image, pixels: image.pixels.slice() }
  for (let y = 0; y < image.height; y++) {
    for (let x = 0; x < image.width; x++) {
      const place = y * image.width + x
      let dragged = 0
      for (let step = 1; step <= reach; step++) {
        const from = sample(image, x - dx * step, y - dy * step, paper)
        dragged = Math.max(dragged, (paper - from) * strength * (1 - step / (reach + 1)))
      }
      out.pixels[place] = Math.max(ink, (image.pixels[place] as number) - dragged)
    }
  }
  return out
}

/**
 * Folded once right across and flattened again: along the fold the print is broken off or has taken dirt, and what
 * lies beyond it is shifted by up to a dot and a half.
 */
export function creased(image: GreyImage, chance: Chance): GreyImage {
  const { width, height } = image
  const [x0, y0] = [chance.between(0, width), chance.between(0, height)]
  const way = chance.between(0, Math.PI)
  const [nx, ny] = [-Math.sin(way), Math.cos(way)]
  const [along, over] = [chance.between(-1.5, 1.5), chance.between(-1, 1)]
  const half = chance.between(0.5, 2)
  const grey = chance.between(0, 1) < 0.5 ? paper : chance.between(0.15, 0.4)
  const out = { ...image, pixels: new Float32Array(image.pixels.length) }
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const beyond = (x - x0) * nx + (y - y0) * ny
      const shift = beyond > 0 ? 1 : 0
      const fromX = x + shift * (along * ny + over * nx)
      const fromY = y + shift * (over * ny - along * nx)
      out.pixels[y * width + x] = Math.abs(beyond) < half ? grey : sample(image, fromX, fromY, paper)
    }
  }
  return out
}
