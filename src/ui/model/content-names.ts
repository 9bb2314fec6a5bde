import { liesIn } from '../../words/lookups.ts'
import { countedPiece } from '../../words/pieces.ts'
import { containerPlace } from '../../words/places.ts'
import type { PieceId, State } from './scene.ts'

/** What lies in a container, by name. */
export function contentNames(state: State, container: number): string[] {
  return setNames(
    state,
    liesIn(state, container).map(({ piece, place, count }) => ({
      piece,
      count,
      slot: containerPlace(place)?.slot,
    })),
  )
}

/** Pieces by name; those of a matched set go together: `8 × cam caps I1 I2 I3 ...`. */
export function setNames(
  state: State,
  pieces: readonly { piece: PieceId; count: number; slot?: string | undefined }[],
): string[] {
  const named = pieces.map(({ piece: id, slot, count }) => {
    const { piece, home } = state.ledger.accounts.get(id) ?? {}
    const alone = `${slot === undefined ? '' : `slot ${slot}: `}${countedPiece(state, id, count)}`
    const isOfSet = home?.position !== undefined && slot === undefined && piece?.kind !== 'connection'
    if (!piece || !isOfSet || count !== 1) return { alone, set: null, at: '' }
    const at = piece.size === undefined ? home.position : `${home.position} ${piece.size}`
    return { alone, set: piece.name, at }
  })
  const said = new Map<string, string>()
  for (const { alone, set, at } of named) {
    const ofSet = named.filter((each) => set !== null && each.set === set)
    const all = `${ofSet.length} × ${set} ${ofSet.map((each) => each.at).join(' ')}`
    said.set(set ?? `${alone} ${at}`, ofSet.length > 1 ? all : alone)
  }
  return [...said.values()]
}
