import { say, sendWords } from '../cures.ts'
import { counted } from '../grammar.ts'
import { freeSlots, liesIn } from '../lookups.ts'
import { countedPiece, pieceName } from '../pieces.ts'
import { containerName, containerPath, placeName, whereName } from '../places.ts'
import { told } from '../told.ts'
import type { Tellers } from './tellers.ts'

/** What concerns bags, bins, trays, tags and shelves. */
export const containerRefusals: Tellers<
  | 'container-void'
  | 'slot-taken'
  | 'no-such-slot'
  | 'slots-short'
  | 'inside-itself'
  | 'not-empty'
  | 'numbers-used-up'
> = {
  'container-void': (state, { container, insteadOf }) => {
    const reason = state.containers.get(container)?.voided?.reason
    const why = reason ? `: ${reason}` : ''
    return insteadOf === null
      ? told(
          `the label of ${placeName(state, `c${container}`)} is void${why}`,
          `use another, or ${say('bag')} opens one`,
        )
      : told(
          `the label of ${placeName(state, `c${container}`)} is void${why}`,
          `use ${containerName(state, insteadOf)}, which took its place`,
        )
  },
  'slot-taken': (state, { container, slot, piece }) =>
    told(
      `${placeName(state, `c${container}/${slot}`)} holds ${pieceName(state, piece)}`,
      freeText(freeSlots(state, container)),
    ),
  'no-such-slot': (state, { container, slot, slots }) =>
    slots === 0
      ? told(
          `${placeName(state, `c${container}`)} has no slots, so there is no slot ${slot}`,
          `leave the slot out`,
        )
      : told(
          `${placeName(state, `c${container}`)} has slots 1 to ${slots}, there is no slot ${slot}`,
          freeText(freeSlots(state, container)),
        ),
  'slots-short': (state, { container, free, wanted }) => {
    const known = state.containers.has(container)
    const name = known ? placeName(state, `c${container}`) : 'the new tray'
    return told(
      `${name} has ${free} free ${free === 1 ? 'slot' : 'slots'}, ${wanted} wanted: ${wanted - free} short`,
      `use a tray with ${counted(wanted, 'free slot')}, or put them away in smaller lots`,
    )
  },
  'inside-itself': (state, { container, into }) =>
    container === into
      ? told(`${placeName(state, `c${container}`)} cannot go into itself`, 'say what else it goes into')
      : told(
          `${placeName(state, `c${container}`)} cannot go into ${placeName(state, `c${into}`)}: that one is inside it (${containerPath(state, into)})`,
          `take ${placeName(state, `c${into}`)} out of it first`,
        ),
  'not-empty': (state, { container, count }) =>
    told(
      `${placeName(state, `c${container}`)} still holds ${counted(count, 'piece')}, so its label cannot be made void`,
      'move what it holds first',
      liesIn(state, container).map(
        ({ piece, place, count: here }) =>
          `${countedPiece(state, piece, here)} ${whereName(state, place)}: ${sendWords(state, 'move', piece, place, { to: 'PLACE' })}`,
      ),
    ),
  'numbers-used-up': (_, { what }) =>
    told(
      `every ${what} number of this job up to 9999 is dealt, and none is dealt twice`,
      what === 'container' ? 'use a container that is empty' : 'go on in a step that is there',
    ),
}

function freeText(free: readonly string[]): string {
  return free.length === 0 ? 'no slot is free: use another tray' : `free: ${free.join(', ')}`
}
