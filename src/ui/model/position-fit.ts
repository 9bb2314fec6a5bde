import { layoutView } from '../../session/layout-view.ts'
import { positionCells } from '../../session/position-cells.ts'
import type { Todo } from '../../session/views.ts'
import type { Cell } from '../../trade/position-drawing/drawn-cell.ts'
import { patternName, placeInBrief } from '../../words/position-drawing.ts'
import type { Line } from '../text/line.ts'
import { positionRows } from './position-rows.ts'
import { headed } from './rows.ts'
import type { State } from './scene.ts'

type Fit = Extract<Todo, { kind: 'fit' }>

/**
 * Where the pieces of a pattern go, while one of them is next: which size belongs where, which way an arrow points, what
 * is home already. Nothing where there is only one size and nobody drew how they lie.
 */
export function fitRows(state: State, { account }: Fit, width: number): Line[] {
  const view = layoutView(state, account.piece.id)
  const { layout, isProposed, positions, sizes, lies } = view
  if (!layout || (isProposed && new Set(sizes.values()).size < 2)) return []
  const belongs = positionCells(view, 'belongs', (place) => placeInBrief(state, place))
  const cells = new Map(
    positions.map(({ position, piece }): [string, Cell] => {
      const place = lies.get(position)
      const isHome = place === 'machine'
      const where = isApart(lies) && place !== undefined && !isHome ? placeInBrief(state, place) : ''
      const says = [belongs.get(position)?.says, isHome ? '✓' : where].filter(Boolean).join(' ')
      return [position, { says, isMarked: piece === account.piece.id }]
    }),
  )
  const { rows, note } = positionRows(layout, cells, { width, height: MOST_ROWS })
  const how = isProposed ? ', proposed from the names alone' : ''
  return headed(`WHERE THEY GO: ${patternName(state, view)}${how}`, [...rows, ...note])
}

/** Taller ones are drawn closer. */
const MOST_ROWS = 12

/** Whether those that are not home yet lie in several places, so that each has to be looked for. */
function isApart(lies: ReadonlyMap<string, string>): boolean {
  return new Set([...lies.values()].filter((place) => place !== 'machine')).size > 1
}
