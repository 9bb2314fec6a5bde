import type { Command, Into } from '../../../src/journal/command.ts'
import type { State } from '../../../src/journal/state.ts'
import type { Chance } from '../../support/damage/chance.ts'

/** What somebody at work says next: most of it is recorded, some is refused, and some makes a long line. */
export function commandByChance(state: State, chance: Chance): Command {
  return oneOf(KINDS, chance)(state, chance)
}

type Maker = (state: State, chance: Chance) => Command

/** What is named more often here is said more often. */
const KINDS: readonly Maker[] = [
  takeOff,
  takeOff,
  takeOff,
  takeOff,
  move,
  move,
  move,
  fit,
  fit,
  note,
  note,
  () => ({ do: 'undo' }),
  () => ({ do: 'redo' }),
  (_, chance) => ({ do: 'begin-strip', title: `cover ${chance.whole(1, 99)} off` }),
  (_, chance) => ({ do: 'open-container', kind: oneOf(['bag', 'bin', 'tag'], chance) }),
  (_, chance) => ({ do: 'deal-labels', count: chance.whole(1, 3) }),
  addPictures,
]

function takeOff(state: State, chance: Chance): Command {
  const found = chance.whole(1, 8)
  const item = {
    kind: 'fastener' as const,
    name: `bracket bolts ${state.dealt.piece + 1}`,
    found,
    should: found,
  }
  return { do: 'take-off', item, into: oneOf([{ kind: 'hand' }, someBag(state, chance)], chance) }
}

function move(state: State, chance: Chance): Command {
  const into = oneOf<Into>([{ kind: 'place', place: 'bench' }, someBag(state, chance)], chance)
  return { do: 'move', piece: somePiece(state, chance), count: 1, into }
}

function fit(state: State, chance: Chance): Command {
  return { do: 'fit', fittings: [{ piece: somePiece(state, chance), count: 1 }] }
}

function note(_: State, chance: Chance): Command {
  return {
    do: 'note',
    kind: 'note',
    text: 'behind the bracket, '.repeat(chance.whole(1, 20)),
  }
}

/** The longest lines that there are: one act of many pictures. */
function addPictures(state: State, chance: Chance): Command {
  const first = state.dealt.picture
  const pictures = Array.from({ length: chance.whole(1, 100) }, (_, index) => ({
    file: `20300115-140500-${first + index + 1}.jpg`,
    sha256: (first + index).toString(16).padStart(64, '0'),
    taken: null,
    belongs: null,
  }))
  return { do: 'add-pictures', pictures }
}

function somePiece(state: State, chance: Chance): `p${number}` {
  return `p${chance.whole(1, Math.max(1, state.dealt.piece))}`
}

function someBag(state: State, chance: Chance): Into {
  const { container } = state.dealt
  return container === 0 || chance.whole(0, 3) === 0
    ? { kind: 'new', container: 'bag' }
    : { kind: 'container', no: chance.whole(1, container) }
}

function oneOf<T>(list: readonly T[], chance: Chance): T {
  return list[chance.whole(0, list.length - 1)] as T
}
