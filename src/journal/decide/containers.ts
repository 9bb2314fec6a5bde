import { holdingsIn } from '../../ledger/ledger.ts'
import { inContainer, type Place, slotOf } from '../../ledger/place.ts'
import type { Command, ContainerKind, Into } from '../command.ts'
import type { Container, EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { firstFree, unusedLabel } from './labels.ts'
import { given, knownContainer, knownLabel, refuse } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** The next free number becomes a container, or the unused label that is named. */
export function openContainer(
  state: State,
  { kind, slots, name, inside, no }: Of<'open-container'>,
): EntryBodyOf<'container-opened'> {
  if (inside !== undefined) knownContainer(state, inside)
  return {
    type: 'container-opened',
    container: { ...newContainer(state, { kind, slots, name, no }), inside: inside ?? null },
  }
}

/** A container is stood into another, or taken out of it; never into itself. */
export function putContainer(
  state: State,
  { container, inside }: Of<'put-container'>,
): EntryBodyOf<'container-put'> {
  knownContainer(state, container)
  for (let outer = inside; outer !== null; outer = knownContainer(state, outer).inside) {
    if (outer === container) refuse({ code: 'inside-itself', container, into: inside ?? container })
  }
  return { type: 'container-put', container, inside }
}

/** A label is void from now on, also one that was never used; refused while something lies in its container. */
export function voidContainer(
  state: State,
  { container, insteadOf, reason }: Of<'void-container'>,
): EntryBodyOf<'container-voided'> {
  knownLabel(state, container)
  if (insteadOf !== undefined) knownLabel(state, insteadOf)
  if (insteadOf === container) refuse({ code: 'inside-itself', container, into: container })
  const count = holdingsIn(state.ledger, container).reduce((sum, holding) => sum + holding.count, 0)
  if (count > 0) refuse({ code: 'not-empty', container, count })
  return { type: 'container-voided', container, insteadOf, reason: given(reason, 'reason') }
}

/** Where pieces go: the places for `matched` pieces of their own, or one for `null`, and the container it opens. */
export interface Destination {
  places: Place[]
  opened?: Container
}

/**
 * Finds the place for one lot of common pieces, or places for a number of matched ones, which take the
 * free slots of a tray in order. Opens the next free container where none is in hand, and the container of an
 * unused label where one is named.
 */
export function destination(state: State, into: Into, matched: number | null): Destination {
  const wanted = matched ?? 1
  if (into.kind === 'place') return { places: Array<Place>(wanted).fill(into.place) }
  if (into.kind === 'new') {
    const { container: kind, slots, name, no } = into
    const opened = newContainer(state, { kind, slots, name, no })
    return { places: placesIn(state, opened, wanted, matched !== null), opened }
  }
  if (into.kind === 'container') {
    const container = knownLabel(state, into.no)
    if (container === null) {
      // Without its slots there is no tray, and without a tray no slot.
      if (into.slot !== undefined || into.as === 'tray')
        refuse({ code: 'slots-not-said', container: into.no })
      return destination(state, { kind: 'new', container: into.as ?? 'bag', no: into.no }, matched)
    }
    if (into.slot !== undefined) return { places: [oneSlot(state, container, into.slot, wanted)] }
    return { places: placesIn(state, container, wanted, matched !== null) }
  }
  if (state.hand === null) return destination(state, { kind: 'new', container: 'bag' }, matched)
  return destination(state, { kind: 'container', no: state.hand }, matched)
}

interface Opened {
  kind: ContainerKind
  slots: number | undefined
  name: string | undefined
  no: number | undefined
}

function newContainer(state: State, { kind, slots, name, no: label }: Opened): Container {
  const no = label === undefined ? firstFree(state) : unusedLabel(state, label)
  if (slots !== undefined && !(Number.isInteger(slots) && slots >= 1 && slots <= 200))
    refuse({ code: 'count-wrong', count: slots })
  return { no, kind, slots, name, inside: null }
}

function placesIn(state: State, container: Container, wanted: number, matched: boolean): Place[] {
  const { no, slots } = container
  if (slots === undefined) return Array<Place>(wanted).fill(inContainer(no))
  // A tray keeps each matched piece in a slot of its own; common pieces share one.
  const taken = new Set(holdingsIn(state.ledger, no).map(({ place }) => slotOf(place)))
  const free = Array.from({ length: slots }, (_, index) => String(index + 1)).filter(
    (slot) => !taken.has(slot),
  )
  const needed = matched ? wanted : 1
  if (free.length < needed) refuse({ code: 'slots-short', container: no, free: free.length, wanted: needed })
  return free.slice(0, needed).map((slot) => inContainer(no, slot))
}

function oneSlot(state: State, { no, slots }: Container, slot: string, wanted: number): Place {
  // `01` or `1.5` would be a second slot in the same place.
  if (slots === undefined || !/^[1-9]\d*$/.test(slot) || Number(slot) > slots) {
    refuse({ code: 'no-such-slot', container: no, slot, slots: slots ?? 0 })
  }
  const holder = holdingsIn(state.ledger, no).find(({ place }) => slotOf(place) === slot)
  if (holder) refuse({ code: 'slot-taken', container: no, slot, piece: holder.piece })
  if (wanted > 1) refuse({ code: 'slots-short', container: no, free: 1, wanted })
  return inContainer(no, slot)
}
