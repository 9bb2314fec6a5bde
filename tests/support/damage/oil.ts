import type { Chance } from './chance.ts'
import type { GreyImage } from './grey-image.ts'

/** How oil lies on a label. */
export interface Oil {
  /** Share of the label's area that it covers, 0 to 1, counted on the label alone and overlaps once. */
  share: number
  /** Old oil hides the print; fresh oil only darkens the paper. `mixed`: each blot is one or the other. */
  kind: 'mixed' | 'opaque' | 'translucent'
  /** How many blots, from and to; one to four where nothing is said. */
  drops?: [number, number]
}

/**
 * The light that oil lets through at each dot, 0 to 1, row by row. The blots fall anywhere on the label. A blot
 * is an ellipse, up to 1.8 times as long as wide, whose edge is waved by up to two fifths; sizes differ up to threefold
 * in area. All grow together until they cover the share.
 */
export function oilFilm(label: Size, { share, kind, drops = [1, 4] }: Oil, chance: Chance): Float32Array {
  const blots = Array.from({ length: chance.whole(...drops) }, () => blotOf(label, kind, chance))
  const size = sizeThatCovers(label, blots, share)
  const film = new Float32Array(label.width * label.height)
  for (let place = 0; place < film.length; place++) {
    const [x, y] = [place % label.width, Math.floor(place / label.width)]
    let passed = 1
    for (const blot of blots) {
      if (blot.coversNever(x, y, size + softEdge)) continue
      const inside = Math.min(Math.max((blot.depthAt(x, y, size) + softEdge) / (2 * softEdge), 0), 1)
      passed *= 1 - (1 - blot.passes) * inside
    }
    film[place] = passed
  }
  return film
}

/** The label seen through the oil. */
export function underFilm(label: GreyImage, film: Float32Array): GreyImage {
  return { ...label, pixels: label.pixels.map((grey, place) => grey * (film[place] as number)) }
}

interface Size {
  width: number
  height: number
}

interface Blot {
  /** Light that passes, 0 to 1. */
  passes: number
  /** How far inside the blot a point is, in dots, when the blots have grown to `size`; negative outside. */
  depthAt(x: number, y: number, size: number): number
  /** The size at which the blot reaches a point. */
  coversFrom(x: number, y: number): number
  /** Told fast: at this size the point is out of reach for certain. */
  coversNever(x: number, y: number, size: number): boolean
}

/** The edge fades over a quarter of a millimetre. */
const softEdge = 1

function blotOf({ width, height }: Size, kind: Oil['kind'], chance: Chance): Blot {
  const [x0, y0] = [chance.between(0, width), chance.between(0, height)]
  const scale = Math.sqrt(chance.between(1, 3))
  const stretch = Math.sqrt(chance.between(1, 1.8))
  const turn = chance.between(0, Math.PI)
  const waves = [2, 3, 4, 5, 7].map((times) => ({
    times,
    height: chance.between(0, 0.3 / times),
    phase: chance.between(0, 2 * Math.PI),
  }))
  const isOpaque = chance.between(0, 1) < 0.5
  const [dark, light] = [chance.between(0.02, 0.1), chance.between(0.3, 0.75)]
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const crests = waves.reduce((sum, wave) => sum + wave.height, 1)
  const farthest = scale * stretch * crests
  const shapeAt = (x: number, y: number) => {
    const [dx, dy] = [x - x0, y - y0]
    const u = (dx * cos + dy * sin) / stretch
    const v = (dy * cos - dx * sin) * stretch
    const angle = Math.atan2(v, u)
    let radius = scale
    for (const wave of waves) radius += scale * wave.height * Math.cos(wave.times * angle + wave.phase)
    return { radius, distance: Math.hypot(u, v) }
  }
  return {
    passes: kind === 'opaque' || (kind === 'mixed' && isOpaque) ? dark : light,
    depthAt(x, y, size) {
      const { radius, distance } = shapeAt(x, y)
      return radius * size - distance
    },
    coversNever: (x, y, size) => Math.hypot(x - x0, y - y0) > farthest * size,
    coversFrom(x, y) {
      const { radius, distance } = shapeAt(x, y)
      return distance / radius
    },
  }
}

/** Each point is covered from some size on; the share of the points that is covered first gives the size. */
function sizeThatCovers(image: Size, blots: Blot[], share: number): number {
  const sizes: number[] = []
  // Every third dot each way is enough to know the share to a tenth of a percent.
  for (let y = 1; y < image.height; y += 3) {
    for (let x = 1; x < image.width; x += 3) {
      let first = Number.POSITIVE_INFINITY
      for (const blot of blots) {
        if (!blot.coversNever(x, y, first)) first = Math.min(first, blot.coversFrom(x, y))
      }
      sizes.push(first)
    }
  }
  sizes.sort((a, b) => a - b)
  return sizes[Math.round(share * (sizes.length - 1))] ?? 0
}
