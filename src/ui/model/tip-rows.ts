import { inToolbox, type ToTip, toTip } from '../../session/last-round.ts'
import { lainInShort, notInToolboxLine, seeInToolbox } from '../../words/lain-in.ts'
import { countedPiece } from '../../words/pieces.ts'
import { containerName, containerStands } from '../../words/places.ts'
import type { Choice } from '../page.ts'
import { type Line, line, plain, strong } from '../text/line.ts'
import { bulleted } from './rows.ts'
import type { Scene, State } from './scene.ts'

/** A count of a bag that the record has nothing in: how many were found in it all the same. */
export function foundIn(container: number, counted: number, says: string): Choice {
  return {
    says,
    act: {
      do: 'send',
      commands: [{ do: 'count', container, counts: [{ piece: null, counted }] }],
      to: counted === 0 ? undefined : { at: 'differences', container },
    },
  }
}

/**
 * The containers of a last round, each with where it stands and what it held. Under way its number says that nothing is
 * in it; what is counted keeps its number, so that a finger that bounces says the same thing twice.
 */
export function tipRows(
  { session, width }: Scene,
  isUnderWay: boolean,
  choose: (choice: Choice, text: Line) => Line[],
): Line[] {
  const { state } = session
  return toTip(state).flatMap((stop) => {
    const { container, agreed, lain } = stop
    const held = lainInShort(state, lain)
    const name = strong(containerStands(state, container))
    const text = line(plain(agreed ? '✓ ' : ''), name, `  held ${held}`)
    return isUnderWay
      ? choose(tipped(state, stop), text)
      : bulleted(`${containerStands(state, container)}  held ${held}`, width)
  })
}

/** What is to be seen in the toolbox. Under way the number of a thing says that one of it is not there. */
export function toolboxRows(
  { session, width }: Scene,
  isUnderWay: boolean,
  choose: (choice: Choice, text: Line) => Line[],
): Line[] {
  const { state } = session
  const things = inToolbox(state)
  if (things.length === 0) return []
  if (!isUnderWay) return bulleted(seeInToolbox(state, things), width)
  return things.flatMap((thing) => {
    const name = countedPiece(state, thing.piece, thing.count)
    return choose(notThere(notInToolboxLine(state, thing), name), line(strong(name)))
  })
}

function notThere(before: string, name: string): Choice {
  return {
    says: `one not in the toolbox: ${name}`,
    act: { do: 'write', before, asks: 'Type why, as: it is not in the toolbox' },
  }
}

/** The containers that were not counted yet on the round. */
export function stillToTip(state: State): ToTip[] {
  return toTip(state).filter(({ agreed }) => !agreed)
}

/** What is done with one, and what its number says: the same as in its row. */
export function tipInBrief(state: State, { container, holds }: ToTip): string[] {
  const no = toTip(state).findIndex((stop) => stop.container === container) + 1
  return holds
    ? [`tip it out, and type ${no} to count it`]
    : [`tip it out; empty: type ${no}`, 'not empty: scan it']
}

/** Of one that something is in still, the number has to be said. */
function tipped(state: State, { container, holds }: ToTip): Choice {
  const name = containerName(state, container)
  return holds
    ? { says: `count what is in ${name}`, act: { do: 'go', to: { at: 'count', container, given: [] } } }
    : foundIn(container, 0, `nothing is in ${name}`)
}
