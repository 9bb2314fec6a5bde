import type { PieceId } from './piece.ts'

/** A container's own place is `c7`; a numbered slot of a tray is `c7/3`. */
export type ContainerPlace = `c${number}` | `c${number}/${string}`

/**
 * Where a piece is now. `machine` is its home on the machine, `toolbox` the home of aids and tools,
 * `bench` loose or in hand, `out` lent or at a machine shop, `supplier` not here yet,
 * `spare` bought and declared surplus.
 */
export type Place = NamedPlace | ContainerPlace | CarrierPlace

/** On another piece, as studs in a pump: it goes where that goes. The place is that piece's id. */
export type CarrierPlace = PieceId

export const NAMED_PLACES = [
  'machine',
  'toolbox',
  'bench',
  'out',
  'supplier',
  'spare',
  'scrap',
  'lost',
] as const
export type NamedPlace = (typeof NAMED_PLACES)[number]

/** The container number of a place, or null for a place that is no container. */
export function containerOf(place: Place): number | null {
  const match = CONTAINER_PLACE.exec(place)
  return match ? Number(match[1]) : null
}

/** The slot named in a place (`c7/3` gives `3`), or null. */
export function slotOf(place: Place): string | null {
  return CONTAINER_PLACE.exec(place)?.[2] ?? null
}

/** The place of a container, or of one of its slots. */
export function inContainer(container: number, slot?: string | number): ContainerPlace {
  return slot === undefined ? `c${container}` : `c${container}/${slot}`
}

/** The piece that a place is on, or null. */
export function carrierOf(place: Place): PieceId | null {
  return CARRIER_PLACE.test(place) ? (place as PieceId) : null
}

/** Whether a text names a place. */
export function isPlace(text: string): text is Place {
  return (
    (NAMED_PLACES as readonly string[]).includes(text) ||
    CONTAINER_PLACE.test(text) ||
    CARRIER_PLACE.test(text)
  )
}

const CONTAINER_PLACE = /^c([1-9]\d{0,3})(?:\/([^/\s]{1,12}))?$/
const CARRIER_PLACE = /^p[1-9]\d*$/
