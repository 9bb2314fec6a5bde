import { judgedPieces } from '../../session/check-views.ts'
import type { Session } from '../../session/session.ts'
import { judgedRows, triggerRows } from '../../words/judging/checks-text.ts'

/** What is to be checked and what was decided, by piece, then the lists that a finding opens. */
export function checksAnswer({ state }: Session): { text: string[]; answer: unknown } {
  const pieces = judgedPieces(state)
  const lists = [...state.triggers.values()]
  const rows = pieces.flatMap((piece) => judgedRows(state, piece))
  const none = 'Nothing is to be checked, and nothing was judged.'
  return {
    text: [
      ...(rows.length === 0 ? [none] : rows),
      ...(lists.length === 0 ? [] : ['Lists that a finding opens:']),
      ...lists.flatMap((list) => triggerRows(state, list).map((row) => `  ${row}`)),
      ...(rows.length === 0 ? ['What is usual for a kind of part: proposals'] : []),
    ],
    answer: { pieces, lists },
  }
}
