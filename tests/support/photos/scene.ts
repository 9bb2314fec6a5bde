import qrcode from 'qrcode'

/** A picture as pixels, four bytes each: red, green, blue, opacity. */
export interface Pixels {
  width: number
  height: number
  data: Uint8Array
}

/** A printed label in the scene. Places in pixels of its middle, the side of the symbol in pixels, turned by degrees. */
export interface LabelInScene {
  code: string
  x: number
  y: number
  side: number
  turned?: number
}

export interface Scene {
  width: number
  height: number
  labels?: LabelInScene[]
  /** Half the width of a box blur over each label, in pixels. */
  blur?: number
  /** The largest change of a pixel by noise, 0 to 255. */
  noise?: number
  /** How bright it is, 0 to 1; less for a dim garage. */
  light?: number
  /** Makes scenes differ from each other, and a scene the same each time. */
  seed?: number
}

/** A bench with the labels on it: a shaded ground with darker parts, white paper, a QR symbol of level H, noise. */
export function drawScene({
  width,
  height,
  labels = [],
  blur = 0,
  noise = 12,
  light = 1,
  seed = 1,
}: Scene): Pixels {
  const grey = new Uint8ClampedArray(width * height)
  const random = chance(seed)
  drawGround(grey, width, height, seed)
  for (const label of labels) {
    drawLabel(grey, width, height, label)
    if (blur > 0) blurAround(grey, width, height, label, blur)
  }
  const data = new Uint8Array(width * height * 4)
  for (let at = 0; at < grey.length; at += 1) {
    const value = (grey[at] ?? 0) * light + (noise > 0 ? Math.floor((random() - 0.5) * 2 * noise) : 0)
    const shown = Math.max(0, Math.min(255, value))
    data[at * 4] = shown
    data[at * 4 + 1] = shown
    data[at * 4 + 2] = Math.max(0, shown - 8)
    data[at * 4 + 3] = 255
  }
  return { width, height, data }
}

/** The picture as a camera stores it that was held so that viewers must turn it by this orientation, 1 to 8 (TIFF 6.0). */
export function asStored(seen: Pixels, orientation: number): Pixels {
  const swaps = orientation >= 5
  const width = swaps ? seen.height : seen.width
  const height = swaps ? seen.width : seen.height
  const data = new Uint8Array(seen.data.length)
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const [seenX, seenY] = seenAt(orientation, x, y, seen)
      const from = (seenY * seen.width + seenX) * 4
      data.set(seen.data.subarray(from, from + 4), (y * width + x) * 4)
    }
  }
  return { width, height, data }
}

/** A repeatable sequence of numbers from 0 to 1 (a linear congruential generator). */
function chance(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
}

function drawGround(grey: Uint8ClampedArray, width: number, height: number, seed: number): void {
  const random = chance(seed + 7)
  for (let y = 0; y < height; y += 1) {
    const shade = 90 + (60 * y) / height
    grey.fill(shade, y * width, (y + 1) * width)
  }
  for (let part = 0; part < 40; part += 1) {
    const partWidth = Math.ceil(width * (0.02 + 0.1 * random()))
    const partHeight = Math.ceil(height * (0.02 + 0.1 * random()))
    const left = Math.floor(random() * (width - partWidth))
    const top = Math.floor(random() * (height - partHeight))
    const tone = 30 + Math.floor(random() * 170)
    for (let y = top; y < top + partHeight; y += 1)
      grey.fill(tone, y * width + left, y * width + left + partWidth)
  }
}

function drawLabel(grey: Uint8ClampedArray, width: number, height: number, label: LabelInScene): void {
  const { modules } = qrcode.create([{ data: label.code, mode: 'numeric' }], { errorCorrectionLevel: 'H' })
  const module = label.side / modules.size
  const paper = label.side / 2 + 6 * module
  const reach = Math.ceil(paper * Math.SQRT2)
  const angle = ((label.turned ?? 0) * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  for (let y = Math.max(0, label.y - reach); y < Math.min(height, label.y + reach); y += 1) {
    for (let x = Math.max(0, label.x - reach); x < Math.min(width, label.x + reach); x += 1) {
      const across = (x - label.x) * cos + (y - label.y) * sin
      const down = (y - label.y) * cos - (x - label.x) * sin
      if (Math.abs(across) > paper || Math.abs(down) > paper) continue
      const column = Math.floor((across + label.side / 2) / module)
      const row = Math.floor((down + label.side / 2) / module)
      const within = column >= 0 && row >= 0 && column < modules.size && row < modules.size
      grey[y * width + x] = within && modules.get(row, column) ? 35 : 225
    }
  }
}

/** Two box blurs, across and down, which together come near to a lens out of focus. */
function blurAround(
  grey: Uint8ClampedArray,
  width: number,
  height: number,
  label: LabelInScene,
  blur: number,
): void {
  const reach = Math.ceil(label.side * 1.2)
  const left = Math.max(blur, label.x - reach)
  const right = Math.min(width - blur - 1, label.x + reach)
  const top = Math.max(blur, label.y - reach)
  const bottom = Math.min(height - blur - 1, label.y + reach)
  for (const stride of [1, width]) {
    const before = grey.slice()
    for (let y = top; y <= bottom; y += 1) {
      for (let x = left; x <= right; x += 1) {
        const at = y * width + x
        let sum = 0
        for (let by = -blur; by <= blur; by += 1) sum += before[at + by * stride] ?? 0
        grey[at] = sum / (2 * blur + 1)
      }
    }
  }
}

/** Where a stored pixel is seen. Orientation as TIFF 6.0, page 36, tells it: where row 0 and column 0 are. */
function seenAt(orientation: number, x: number, y: number, seen: Pixels): [number, number] {
  const right = seen.width - 1
  const bottom = seen.height - 1
  switch (orientation) {
    case 2:
      return [right - x, y]
    case 3:
      return [right - x, bottom - y]
    case 4:
      return [x, bottom - y]
    case 5:
      return [y, x]
    case 6:
      return [right - y, x]
    case 7:
      return [right - y, bottom - x]
    case 8:
      return [y, bottom - x]
    default:
      return [x, y]
  }
}
