import { type LayoutView, layoutView } from '../../session/layout-view.ts'
import type { Session } from '../../session/session.ts'

/** Where the positions of a pattern lie on the machine. */
export function layoutAnswer(
  session: Session,
  piece: LayoutView['piece'],
): { text: string[]; answer: LayoutView } {
  const view = layoutView(session.state, piece)
  return {
    text: view.layout?.places.map(({ position, x, y }) => `${position}  ${x} ${y}`) ?? [],
    answer: view,
  }
}
