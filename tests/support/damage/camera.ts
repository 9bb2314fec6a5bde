import type { Chance } from './chance.ts'
import { blurred, type GreyImage, sample } from './grey-image.ts'

/** How a picture of a label is taken. */
export interface Shot {
  /** Camera pixels to one dot of the label. */
  scale: number
  /** The camera is held askew by so many degrees; one end of the label is nearer than its middle by such a share. */
  angle: number
  lean: number
  /** Standard deviation of the lens blur in dots. */
  blur: number
  /** Standard deviation of the sensor noise, of a reflectance of 1. */
  noise: number
  /** The light falls off by this share from one end to the other, in this direction. */
  shade: number
  shadeFrom: number
}

/** What part of the label is in the picture, in dots. */
export interface Frame {
  left: number
  top: number
  width: number
  height: number
}

/** A shot by hand in a garage: 1.5 to 3 pixels a dot, some degrees askew, a little out of focus, uneven light. */
export function handheld(chance: Chance): Shot {
  return {
    scale: chance.between(1.5, 3),
    angle: chance.between(-20, 20),
    lean: chance.between(-0.12, 0.12),
    blur: chance.between(0.3, 0.9),
    noise: chance.between(0.005, 0.025),
    shade: chance.between(0, 0.4),
    shadeFrom: chance.between(0, 2 * Math.PI),
  }
}

/** The picture of that part of the label, on a bench of dark grey, as grey bytes. */
export function photograph(label: GreyImage, frame: Frame, shot: Shot, chance: Chance): Picture {
  const [cos, sin] = [Math.cos((shot.angle * Math.PI) / 180), Math.sin((shot.angle * Math.PI) / 180)]
  const width = Math.ceil((Math.abs(frame.width * cos) + Math.abs(frame.height * sin)) * shot.scale)
  const height = Math.ceil((Math.abs(frame.width * sin) + Math.abs(frame.height * cos)) * shot.scale)
  const bytes = new Uint8ClampedArray(width * height)
  const seen = blurred(label, shot.blur)
  const grain = Array.from({ length: 9973 }, () => chance.normal())
  const [middleX, middleY] = [frame.left + frame.width / 2, frame.top + frame.height / 2]
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [u, v] = [(x - width / 2) / shot.scale, (y - height / 2) / shot.scale]
      // What leans away is smaller by so much at one end and larger at the other.
      const depth = 1 + (shot.lean * 2 * u) / label.width
      const fromX = middleX + (u * cos + v * sin) * depth
      const fromY = middleY + (v * cos - u * sin) * depth
      const light =
        1 -
        shot.shade *
          (0.5 + (u * Math.cos(shot.shadeFrom) + v * Math.sin(shot.shadeFrom)) / (frame.width + frame.height))
      const noise = shot.noise * (grain[(y * width + x) % grain.length] as number)
      bytes[y * width + x] = 255 * (sample(seen, fromX, fromY, bench) * light + noise)
    }
  }
  return { width, height, bytes }
}

/** A picture in 256 greys, row by row. */
export interface Picture {
  width: number
  height: number
  bytes: Uint8ClampedArray
}

const bench = 0.3
