import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { NamedPlace, Place } from '../ledger/place.ts'

/** A place by itself: `bag 12`, `tray 3, slot 5`, `the bench`. */
export function placeName(state: State, place: Place): string {
  const carrier = carrierName(state, place)
  if (carrier !== null) return carrier
  const inside = containerPlace(place)
  if (!inside) return NAMES[place as NamedPlace]
  const name = containerKind(state, inside.container)
  return inside.slot === undefined ? name : `${name}, slot ${inside.slot}`
}

/** Where a thing is: `in bag 12`, `on the bench`, `out`. */
export function whereName(state: State, place: Place): string {
  const carrier = carrierName(state, place)
  if (carrier !== null) return `on ${carrier}`
  const inside = containerPlace(place)
  return inside ? `${within(state, inside.container)} ${placeName(state, place)}` : WHERE[place as NamedPlace]
}

/** Where a thing goes: `into bag 12`, `onto the bench`, `to scrap`. */
export function intoName(state: State, place: Place): string {
  const carrier = carrierName(state, place)
  if (carrier !== null) return `onto ${carrier}`
  const inside = containerPlace(place)
  return inside
    ? `${within(state, inside.container)}to ${placeName(state, place)}`
    : INTO[place as NamedPlace]
}

/** A container with the name that was given to it: `bag 12 (cam caps)`; an unused label: `label 14`. */
export function containerName(state: State, no: number): string {
  const name = state.containers.get(no)?.name
  return name ? `${containerKind(state, no)} (${name})` : containerKind(state, no)
}

/** More than stand in each other in a workshop: thousands in a row would take thousands of words for each of them. */
const MOST_OUTER = 12

/** A container and all that it stands in: `bag 12 in bin 3 on shelf 1`. */
export function containerPath(state: State, no: number): string {
  return `${containerKind(state, no)}${standsIn(state, no)}`
}

/** The same with its own name: `bag 12 (cam caps) in bin 3 on shelf 1`. */
export function containerStands(state: State, no: number): string {
  return `${containerName(state, no)}${standsIn(state, no)}`
}

/** ` in bin 3 on shelf 1`; nothing where it stands in no other. */
function standsIn(state: State, no: number): string {
  let path = ''
  const seen = new Set([no])
  let outer = state.containers.get(no)?.inside ?? null
  while (outer !== null && !seen.has(outer)) {
    if (seen.size > MOST_OUTER) return `${path}, and further out`
    path += ` ${within(state, outer)} ${containerKind(state, outer)}`
    seen.add(outer)
    outer = state.containers.get(outer)?.inside ?? null
  }
  return path
}

/** Where those of a piece are that cannot be had: `, 2 in scrap, 1 lost`. */
export function goneText(state: State, piece: PieceId, places: readonly NamedPlace[]): string {
  const at = state.ledger.accounts.get(piece)?.at
  return places
    .filter((place) => at?.has(place))
    .map((place) => `, ${at?.get(place)} ${whereName(state, place)}`)
    .join('')
}

/** The container and the slot that a place names, or null for a place that is no container. */
export function containerPlace(place: Place): { container: number; slot: string | undefined } | null {
  const match = /^c(\d+)(?:\/(.+))?$/.exec(place)
  return match ? { container: Number(match[1]), slot: match[2] } : null
}

/** The piece that a place is on: `water pump p5`; null for any other place. */
function carrierName(state: State, place: Place): string | null {
  if (!/^p\d+$/.test(place)) return null
  const name = state.ledger.accounts.get(place as PieceId)?.piece.name
  return name === undefined ? place : `${name} ${place}`
}

const NAMES: Record<NamedPlace, string> = {
  machine: 'the machine',
  toolbox: 'the toolbox',
  bench: 'the bench',
  out: 'out',
  supplier: 'a supplier',
  spare: 'spare',
  scrap: 'scrap',
  lost: 'lost',
}

const WHERE: Record<NamedPlace, string> = {
  machine: 'on the machine',
  toolbox: 'in the toolbox',
  bench: 'on the bench',
  out: 'out',
  supplier: 'at a supplier',
  spare: 'among the spares',
  scrap: 'in scrap',
  lost: 'lost',
}

const INTO: Record<NamedPlace, string> = {
  machine: 'onto the machine',
  toolbox: 'into the toolbox',
  bench: 'onto the bench',
  out: 'out',
  supplier: 'to a supplier',
  spare: 'to the spares',
  scrap: 'to scrap',
  lost: 'to lost',
}

function containerKind(state: State, no: number): string {
  return `${state.containers.get(no)?.kind ?? (state.blanks.has(no) ? 'label' : 'container')} ${no}`
}

/** One stands on a shelf and hangs on a tag; all others one lies in. */
function within(state: State, no: number): 'in' | 'on' {
  const kind = state.containers.get(no)?.kind
  return kind === 'shelf' || kind === 'tag' ? 'on' : 'in'
}
