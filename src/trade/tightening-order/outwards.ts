import { clockwiseFrom, type FromMiddle } from './middle.ts'
import { star } from './star.ts'

/** A row: from the middle to both ends, one side and the other in turn. */
export function alternating(places: readonly FromMiddle[]): FromMiddle[] {
  const along = (place: FromMiddle) => place.x || place.y
  const outwards = places.toSorted((a, b) => a.distance - b.distance || along(a) - along(b))
  const [first] = outwards
  if (!first) return []
  const isBehind = (place: FromMiddle) => along(place) < 0
  const isFromBehind = isBehind(first) || first.distance === 0
  const near = outwards.filter((place) => place !== first && isBehind(place) === isFromBehind)
  const far = outwards.filter((place) => place !== first && isBehind(place) !== isFromBehind)
  // The first one stands for its own side, unless it is the middle itself.
  const [next, after] = first.distance === 0 ? [near, far] : [far, near]
  return [first, ...inTurn(next, after)]
}

/** A grid ring by ring, each clockwise from where the one inside it ended; the corners of the whole grid last. */
export function spiral(places: readonly FromMiddle[]): FromMiddle[] {
  const order: FromMiddle[] = []
  for (const ring of ringsOf(places)) {
    const last = order.at(-1)
    order.push(...clockwiseFrom(ring, last?.bearing ?? topLeft(ring).bearing))
  }
  return order
}

/** A grid ring by ring, each straight across and from side to side; the corners of the whole grid last. */
export function crosswise(places: readonly FromMiddle[]): FromMiddle[] {
  return ringsOf(places).flatMap((ring) => {
    const around = clockwiseFrom(ring, topLeft(ring).bearing)
    return star(around.length).flatMap((turn) => around[turn] ?? [])
  })
}

/** A free outline: always the one most opposite to the last, among those that are hardly further out than the nearest. */
export function oppositeOutwards(places: readonly FromMiddle[]): FromMiddle[] {
  const left = places.toSorted((a, b) => a.distance - b.distance || a.y - b.y || a.x - b.x)
  const order: FromMiddle[] = []
  for (let nearest = left[0]; nearest; nearest = left[0]) {
    const reach = nearest.distance + onePitch
    const last = order.at(-1)
    const next = last
      ? mostOpposite(
          last,
          left.filter(({ distance }) => distance <= reach),
        )
      : nearest
    order.push(next)
    left.splice(left.indexOf(next), 1)
  }
  return order
}

/** Marks of an outline stand in columns and rows that are one apart. */
const onePitch = 1

/** The rings around the middle, as columns and rows away from it; the corners are a ring of their own. */
function ringsOf(places: readonly FromMiddle[]): FromMiddle[][] {
  const farX = Math.max(...places.map(({ x }) => x))
  const farY = Math.max(...places.map(({ y }) => y))
  const isCorner = ({ x, y }: FromMiddle) => Math.abs(x) === farX && Math.abs(y) === farY
  const rings = new Map<number, FromMiddle[]>()
  for (const place of places) {
    const ring = isCorner(place) ? Number.POSITIVE_INFINITY : Math.max(Math.abs(place.x), Math.abs(place.y))
    rings.set(ring, [...(rings.get(ring) ?? []), place])
  }
  return [...rings].toSorted(([a], [b]) => a - b).map(([, ring]) => ring)
}

function topLeft(ring: readonly FromMiddle[]): FromMiddle {
  return ring.toSorted((a, b) => a.y - b.y || a.x - b.x)[0] as FromMiddle
}

/** The first of those that are furthest round from a place. */
function mostOpposite(from: FromMiddle, candidates: readonly FromMiddle[]): FromMiddle {
  const between = ({ bearing }: FromMiddle) => 180 - Math.abs(180 - Math.abs(bearing - from.bearing))
  return candidates.toSorted((a, b) => between(b) - between(a))[0] as FromMiddle
}

function inTurn<Value>(some: readonly Value[], others: readonly Value[]): Value[] {
  const longer = Math.max(some.length, others.length)
  return Array.from({ length: longer }, (_, index) => [
    some.slice(index, index + 1),
    others.slice(index, index + 1),
  ]).flat(2)
}
