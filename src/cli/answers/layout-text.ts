import { type LayoutView, layoutView } from '../../session/layout-view.ts'
import { type PositionSet, positionCells } from '../../session/position-cells.ts'
import type { Session } from '../../session/session.ts'
import { drawLayout } from '../../trade/position-drawing/draw-layout.ts'
import { patternTrouble } from '../../words/pattern-troubles.ts'
import { formNote, layoutForms, patternName, placeInBrief } from '../../words/position-drawing.ts'

/** Where the positions of a pattern lie on the machine, as a drawing, and where its pieces are. */
export function layoutAnswer(
  session: Session,
  piece: LayoutView['piece'],
): { text: string[]; answer: LayoutView } {
  const { state } = session
  const view = layoutView(state, piece)
  if (view.fault) {
    const { what, lines, cure } = patternTrouble(state, view.fault)
    return { text: [what, ...lines.map((line) => `  ${line}`), cure], answer: view }
  }
  const isApart = new Set(view.lies.values()).size > 1
  const text = [
    `${patternName(state, view)}, ${view.isProposed ? 'proposed from the names alone' : 'as drawn'}:`,
    ...drawn(session, view, 'belongs'),
    ...(isApart ? ['', 'Where they are now:', ...drawn(session, view, 'lies')] : []),
    ...(view.order.length > 0 ? ['', `Order of tightening: ${view.order.join(', ')}`] : []),
    '',
    layoutForms(view),
  ]
  return { text, answer: view }
}

/** As wide and as high as any terminal. */
const ROOM = { width: 76, height: 40 }

function drawn({ state }: Session, view: LayoutView, set: PositionSet): string[] {
  if (!view.layout) return []
  const cells = positionCells(view, set, (place) => placeInBrief(state, place))
  const { rows, form } = drawLayout(view.layout, cells, ROOM)
  const note = formNote(form)
  return [
    '',
    ...rows.map((row) => `  ${row.map(({ text }) => text).join('')}`.trimEnd()),
    ...(note === null ? [] : ['', note]),
  ]
}
