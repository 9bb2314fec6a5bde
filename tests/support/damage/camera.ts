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

/** What the lens makes of the label. */
export function throughLens(label: GreyImage, shot: Shot): GreyImage {
  return blurred(label, shot.blur)
}

/** The picture of that part of a label seen through the lens, on a bench of dark grey. */
export function photograph(seen: GreyImage, frame: Frame, shot: Shot, chance: Chance): Picture {
  const turn = (shot.angle * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const width = Math.ceil((Math.abs(frame.width * cos) + Math.abs(frame.height * sin)) * shot.scale)
  const height = Math.ceil((Math.abs(frame.width * sin) + Math.abs(frame.height * cos)) * shot.scale)
  const bytes = new Uint8ClampedArray(width * height)
  const grain = Float32Array.from({ length: 9973 }, () => shot.noise * chance.normal())
  const [middleX, middleY] = [frame.left + frame.width / 2, frame.top + frame.height / 2]
  const shadeAcross = (shot.shade * Math.cos(shot.shadeFrom)) / (seen.width + seen.height)
  const shadeDown = (shot.shade * Math.sin(shot.shadeFrom)) / (seen.width + seen.height)
  // What leans away is smaller by so much at one end and larger at the other.
  const lean = (2 * shot.lean) / seen.width
  for (let place = 0; place < bytes.length; place++) {
    const u = ((place % width) - width / 2) / shot.scale
    const v = (Math.floor(place / width) - height / 2) / shot.scale
    const depth = 1 + lean * u
    const grey = sample(
      seen,
      middleX + (u * cos + v * sin) * depth,
      middleY + (v * cos - u * sin) * depth,
      bench,
    )
    const light = 1 - shot.shade / 2 - u * shadeAcross - v * shadeDown
    bytes[place] = 255 * (grey * light + (grain[place % grain.length] as number))
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
