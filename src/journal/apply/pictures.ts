import { holdingsIn } from '../../ledger/ledger.ts'
import type { Piece } from '../../ledger/piece.ts'
import type { PictureFacts, State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'
import { containerState } from './containers.ts'
import { stepOf } from './moves.ts'

/** Pictures, and what each shows. */
export const pictureAppliers: AppliersOf<'pictures-added' | 'picture-sorted'> = {
  'pictures-added': (state, { pictures }) => {
    for (const picture of pictures) {
      if (state.pictures.has(picture.id)) throw new Error(`there is a picture ${picture.id} already`)
      state.pictures.set(picture.id, { ...picture, pieces: piecesShown(state, picture.belongs) })
    }
  },
  'picture-sorted': (state, { picture, belongs }) => {
    const known = state.pictures.get(picture)
    if (!known) throw new Error(`no picture ${picture}`)
    known.belongs = belongs
    known.pieces = piecesShown(state, belongs)
  },
}

/** The pieces in what a picture shows. Throws when that was never there. */
function piecesShown(state: State, belongs: PictureFacts['belongs']): Piece['id'][] {
  if (belongs === null || belongs === 'none') return []
  if ('step' in belongs) {
    stepOf(state, belongs.step)
    return []
  }
  if (!state.blanks.has(belongs.container)) containerState(state, belongs.container)
  return [...new Set(holdingsIn(state.ledger, belongs.container).map(({ piece }) => piece))]
}
