import type { State } from '../journal/state.ts'
import type { MissingView } from '../session/missing-views.ts'
import { explainWords, faultWords, say, sendWords, shortageWords } from './cures.ts'
import { joined, sentence } from './grammar.ts'
import { differenceName, faultName } from './names.ts'
import { pieceName } from './pieces.ts'
import { goneText } from './places.ts'

/** What is missing or broken of a piece, and each way in which it can be put right or accepted. */
export function missingText(state: State, view: MissingView): { what: string; ways: string[] } {
  const { piece, short, neverThere, lost, faults, differences } = view
  const gone = goneText(state, piece, ['scrap', 'lost']).replace(/^, /, '')
  const facts = [
    short > 0 ? `${short} short` : '',
    neverThere > 0 ? `${neverThere} missing when the job began` : '',
    gone,
    ...differences.map((id) => `count ${differenceName(state, id)}`),
    ...faults.map((id) => faultName(state, id)),
  ].filter(Boolean)
  const find = sendWords(state, 'move', piece, 'lost', { count: lost, to: 'bench' })
  const accept = say(`accept lost ${piece} because ...`)
  return {
    what: `${pieceName(state, piece)}: ${joined(facts)}`,
    ways: [
      ...(short > 0 ? [shortageWords(state, piece, short)] : []),
      // Where it is short, how to find it is said with the shortage.
      ...(lost > 0
        ? [short > 0 ? `${accept} when nobody looks any more` : `${find} when found, or ${accept}`]
        : []),
      ...differences.map((id) => explainWords(state, id)),
      ...faults.map((id) => faultWords(state, id)),
    ].map(sentence),
  }
}
