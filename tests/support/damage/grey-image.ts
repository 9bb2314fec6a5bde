/** Reflectance of a bitmap, row by row: 0 black to 1 white. */
export interface GreyImage {
  width: number
  height: number
  pixels: Float32Array
}

/** An image of one grey. */
export function plainImage(width: number, height: number, grey: number): GreyImage {
  return { width, height, pixels: new Float32Array(width * height).fill(grey) }
}

/** What stands at x, y between the pixels, in proportion; `beyond` outside the image. */
export function sample({ width, height, pixels }: GreyImage, x: number, y: number, beyond: number): number {
  const left = Math.floor(x)
  const top = Math.floor(y)
  if (left < 0 || top < 0 || left >= width - 1 || top >= height - 1) return beyond
  const [right, down] = [x - left, y - top]
  const place = top * width + left
  const upper = (pixels[place] as number) * (1 - right) + (pixels[place + 1] as number) * right
  const lower =
    (pixels[place + width] as number) * (1 - right) + (pixels[place + width + 1] as number) * right
  return upper * (1 - down) + lower * down
}

/** Blurred as by a lens out of focus: a Gaussian of the given standard deviation in pixels. */
export function blurred(image: GreyImage, sigma: number): GreyImage {
  if (sigma <= 0) return image
  const reach = Math.ceil(sigma * 3)
  const bell = Array.from({ length: 2 * reach + 1 }, (_, at) =>
    Math.exp(-((at - reach) ** 2) / (2 * sigma ** 2)),
  )
  const total = bell.reduce((sum, weight) => sum + weight, 0)
  const weights = Float32Array.from(bell, (weight) => weight / total)
  const across = convolved(image, weights, 1, image.width)
  return convolved(across, weights, image.width, image.height)
}

function convolved(image: GreyImage, weights: Float32Array, stride: number, length: number): GreyImage {
  const { width, pixels } = image
  const reach = weights.length >> 1
  const out = new Float32Array(pixels.length)
  for (let place = 0; place < pixels.length; place++) {
    const at = stride === 1 ? place % width : Math.floor(place / width)
    let sum = 0
    for (let k = -reach; k <= reach; k++) {
      const inside = Math.min(Math.max(at + k, 0), length - 1) - at
      sum += (weights[k + reach] as number) * (pixels[place + inside * stride] as number)
    }
    out[place] = sum
  }
  return { ...image, pixels: out }
}
