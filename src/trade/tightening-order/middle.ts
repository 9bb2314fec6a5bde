import type { PlacedPosition, PositionLayout } from '../position-layout/position-layout.ts'

/** A place as seen from the middle of its layout. */
export interface FromMiddle {
  position: string
  /** To the right. */
  x: number
  /** Down. */
  y: number
  /** Degrees clockwise from straight up, 0 to less than 360; 0 in the middle itself. */
  bearing: number
  distance: number
}

/** All places as seen from the middle: of a circle its centre, else halfway between the outermost ones. */
export function fromMiddle({ shape, places }: PositionLayout): FromMiddle[] {
  const middleX = shape === 'circle' ? 0 : halfway(places.map(({ x }) => x))
  const middleY = shape === 'circle' ? 0 : halfway(places.map(({ y }) => y))
  return places.map((place) => seenFrom(place, middleX, middleY))
}

/** Clockwise, from the one that is first in the list; what stands in the middle before all others. */
export function clockwise(places: readonly FromMiddle[]): FromMiddle[] {
  const around = places.filter(({ distance }) => distance > 0)
  const middle = places.filter(({ distance }) => distance === 0)
  return [...middle, ...clockwiseFrom(around, around[0]?.bearing ?? 0)]
}

/** Clockwise, from the first one at a bearing or after it; of two in line the inner one first. */
export function clockwiseFrom(places: readonly FromMiddle[], bearing: number): FromMiddle[] {
  const after = (place: FromMiddle) => withoutNoise(place.bearing - bearing + 360) % 360
  return places.toSorted((a, b) => after(a) - after(b) || a.distance - b.distance)
}

function seenFrom({ position, x, y }: PlacedPosition, middleX: number, middleY: number): FromMiddle {
  const right = x - middleX
  const down = y - middleY
  const degrees = (Math.atan2(right, -down) * 180) / Math.PI
  const distance = withoutNoise(Math.hypot(right, down))
  return {
    position,
    x: right,
    y: down,
    bearing: distance === 0 ? 0 : withoutNoise(degrees + 360) % 360,
    distance,
  }
}

function halfway(values: readonly number[]): number {
  return (Math.min(...values) + Math.max(...values)) / 2
}

/** Sines and square roots leave crumbs; two places are in line when nine digits say so. */
function withoutNoise(value: number): number {
  return Number(value.toFixed(9)) + 0
}
