import type { State } from '../journal/state.ts'
import type { InToolbox, LainIn } from '../session/last-round.ts'
import { say } from './cures.ts'
import { stepName } from './names.ts'
import { countedPieces, liesText } from './pieces.ts'

/** Why a last round comes before the first start. */
export const LAST_ROUND_WHY = 'what was ticked may still lie in its bag'

/** What lay in a container once, in short: `8 × seat bolts M6x25 and 2 × clips`. What is gone for good is left out. */
export function lainInShort(state: State, lain: readonly LainIn[]): string {
  const isOn = ({ piece }: LainIn) => state.ledger.accounts.get(piece)?.at.has('machine') === true
  return countedPieces(state, lain.some(isOn) ? lain.filter(isOn) : lain)
}

/** The same with where it is now and since when it is out; what has the same way behind it is told together. */
export function lainTexts(state: State, lain: readonly LainIn[], when: (at: string) => string): string[] {
  const groups = new Map<string, LainIn[]>()
  for (const each of lain) {
    const now = nowAt(state, each)
    groups.set(now, [...(groups.get(now) ?? []), each])
  }
  return [...groups].map(([now, pieces]) => {
    const last =
      pieces
        .map(({ at }) => at)
        .sort()
        .at(-1) ?? ''
    return `${countedPieces(state, pieces)}, out since ${when(last)}: ${now}`
  })
}

/** What is to be seen in the toolbox: `see in it 1 × magnet and 2 × rags at inlet port 1`. */
export function seeInToolbox(state: State, things: readonly InToolbox[]): string {
  return `see in it ${countedPieces(state, things)}`
}

/** How it is said that one of it is not there. */
export function notInToolbox(state: State, thing: InToolbox): string {
  return say(`${notInToolboxLine(state, thing)}...`)
}

/** The line for it, up to the reason. */
export function notInToolboxLine(state: State, { piece }: InToolbox): string {
  const isTool = state.ledger.accounts.get(piece)?.piece.kind === 'tool'
  return `move 1 ${piece} from toolbox to ${isTool ? 'bench' : 'machine'} because `
}

function nowAt(state: State, { piece }: LainIn): string {
  const account = state.ledger.accounts.get(piece)
  const isHome = account !== undefined && [...account.at.keys()].every((place) => place === 'machine')
  return isHome ? `home in ${stepName(state, account.piece.step)}` : liesText(state, piece)
}
