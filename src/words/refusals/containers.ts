import { say, sendWords } from '../cures.ts'
import { counted, isAre } from '../grammar.ts'
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
  | 'too-many-labels'
  | 'label-unused'
  | 'label-in-use'
  | 'no-such-label'
  | 'slots-not-said'
  | 'no-unused-labels'
> = {
  'container-void': (state, { container, insteadOf }) => {
    const blank = state.blanks.get(container)
    const { reason } = (state.containers.get(container) ?? blank)?.voided ?? {}
    const label = `${blank ? '' : 'the label of '}${placeName(state, `c${container}`)}`
    return told(
      `${label} is void${reason ? `: ${reason}` : ''}`,
      insteadOf === null
        ? `use another, or ${say('bag')} opens one`
        : `use ${containerName(state, insteadOf)}, which took its place`,
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
  'numbers-used-up': (_, { what, left }) => {
    if (what === 'step')
      return told(
        'every step number of this job up to 9999 is dealt, and none is dealt twice',
        'go on in a step that is there',
      )
    return left > 0
      ? told(
          `only ${counted(left, 'container number')} of this job up to 8999 ${isAre(left)} left`,
          `ask for ${left} at most`,
        )
      : told(
          'every container number of this job up to 8999 is dealt, and none is dealt twice',
          'use a container that is empty, or a label that is unused',
        )
  },
  'too-many-labels': (_, { count, most }) =>
    told(`${count} labels cannot be dealt at once`, `ask for 1 to ${most}`),
  'label-unused': (_, { container }) =>
    told(
      `label ${container} is unused: no container has it yet`,
      `put something into it first, or open it: ${say(`bag label ${container}`)}`,
    ),
  'label-in-use': (state, { container }) =>
    told(
      `label ${container} is in use: it is ${containerName(state, container)}`,
      `use another; ${say(`scan ${container}`)} shows what is in it`,
    ),
  'no-such-label': (state, { container }) => {
    const unused = [...state.blanks].find(([, { voided }]) => voided === null)?.[0]
    return told(
      `there is no unused label ${container}: that number is not on a sheet of labels`,
      `${unused === undefined ? '' : `the first unused one is ${unused}; `}${say('bag')} opens one with the next number`,
    )
  },
  'slots-not-said': (_, { container }) =>
    told(
      `label ${container} is unused, so it has no slots yet`,
      `say how many: ${say(`tray 12 slots label ${container}`)}`,
    ),
  'no-unused-labels': (_, { from, to }) =>
    told(
      from === to ? `label ${from} is not an unused one` : `none of the labels ${from} to ${to} is unused`,
      'those that containers have are made void one by one, once they are empty',
    ),
}

function freeText(free: readonly string[]): string {
  return free.length === 0 ? 'no slot is free: use another tray' : `free: ${free.join(', ')}`
}
