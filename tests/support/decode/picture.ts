import type { Bitmap } from '../../../src/label/render/bitmap.ts'
import type { Picture } from '../../../src/label/render/rasteriser.ts'

/** A part of a picture. Where it goes beyond the edge it is white. */
export function cropped(picture: Picture, left: number, top: number, width: number, height: number): Picture {
  const rgba = new Uint8Array(4 * width * height).fill(255)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [column, row] = [left + x, top + y]
      if (column < 0 || row < 0 || column >= picture.width || row >= picture.height) continue
      const from = 4 * (row * picture.width + column)
      rgba.set(picture.rgba.subarray(from, from + 4), 4 * (y * width + x))
    }
  }
  return { width, height, rgba }
}

/** Dots as a picture, so many white ones around them. */
export function pictureOfDots({ width, height, rowBytes, dots }: Bitmap, border = 0): Picture {
  const wide = width + 2 * border
  const rgba = new Uint8Array(4 * wide * (height + 2 * border)).fill(255)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (((dots[y * rowBytes + (x >> 3)] ?? 0) & (0x80 >> (x & 7))) === 0) continue
      const at = 4 * ((y + border) * wide + x + border)
      rgba.fill(0, at, at + 3)
    }
  }
  return { width: wide, height: height + 2 * border, rgba }
}

/** The box around everything dark in a picture, in its own dots; right and bottom lie outside. */
export function inked({ width, height, rgba }: Picture) {
  const box = { left: width, top: height, right: 0, bottom: 0 }
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if ((rgba[4 * (y * width + x)] ?? 255) > 127) continue
      box.left = Math.min(box.left, x)
      box.right = Math.max(box.right, x + 1)
      box.top = Math.min(box.top, y)
      box.bottom = Math.max(box.bottom, y + 1)
    }
  }
  return box
}
