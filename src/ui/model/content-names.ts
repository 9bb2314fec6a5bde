import { liesIn } from '../../words/lookups.ts'
import { countedPiece } from '../../words/pieces.ts'
import { containerPlace } from '../../words/places.ts'
import type { State } from './scene.ts'

/** What lies in a container, by name: the pieces of a matched set go together, `8 × cam caps I1 I2 I3 ...`. */
export function contentNames(state: State, container: number): string[] {
  const named = liesIn(state, container).map(({ piece: id, place, count }) => {
    const slot = containerPlace(place)?.slot
    const { piece, home } = state.ledger.accounts.get(id) ?? {}
    const alone = `${slot === undefined ? '' : `slot ${slot}: `}${countedPiece(state, id, count)}`
    if (!piece || home?.position === undefined || slot !== undefined || piece.kind === 'connection')
      return { alone, set: null, at: '' }
    const at = piece.size === undefined ? home.position : `${home.position} ${piece.size}`
    return { alone, set: piece.name, at }
  })
  const said = new Map<string, string>()
  for (const { alone, set } of named) {
    const ofSet = named.filter((each) => set !== null && each.set === set)
    const all = `${ofSet.length} × ${set} ${ofSet.map(({ at }) => at).join(' ')}`
    said.set(set ?? alone, ofSet.length > 1 ? all : alone)
  }
  return [...said.values()]
}
