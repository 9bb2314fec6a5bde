import { stepsHiddenBy } from '../../session/views.ts'
import { stepName } from '../../words/names.ts'
import { countedPiece } from '../../words/pieces.ts'
import type { Line } from '../text/line.ts'
import { setNames } from './content-names.ts'
import { inOneFlow } from './rows.ts'
import type { Scene } from './scene.ts'

/** What a step is about to hide: what is home in the steps beneath it, and what was in there for the work. */
export function lastLookRows({ session, width }: Scene, no: number): Line[] {
  const { state } = session
  return stepsHiddenBy(session, no).flatMap((lower) => {
    const { pieces, aids } = session.gates().contentsOf(lower)
    const home = setNames(
      state,
      pieces.map(({ piece, should }) => ({ piece: piece.id, count: should })),
    )
    const out = aids.map(({ piece, entered }) => `out again: ${countedPiece(state, piece.id, entered)}`)
    const seen = [...home, ...out]
    return seen.length === 0
      ? []
      : inOneFlow([`${stepName(state, lower)}: ${seen[0]}`, ...seen.slice(1)], width, 4)
  })
}
