import { layoutView } from '../../session/layout-view.ts'
import type { Todo } from '../../session/views.ts'
import { patternName } from '../../words/position-drawing.ts'
import { type Choice, goTo } from '../page.ts'
import type { PieceId, State } from './scene.ts'

/** Going to the drawing of what a step puts back or turns next; null where that has no positions. */
export function drawChoice(state: State, step: number, todo: readonly Todo[]): Choice | null {
  const turn = todo.find((each) => each.kind === 'turn')
  const joint = turn?.tightening ?? [...state.tightenings.values()].find((each) => each.step === step)
  const fits = todo.flatMap((each) => (each.kind === 'fit' ? [each.account.piece.id] : []))
  for (const piece of joint ? [...fits, joint.piece] : fits) {
    const choice = drawingOf(state, piece)
    if (choice) return choice
  }
  return null
}

/** Going to the drawing of the pattern that a piece is of; null where it is of none. */
export function drawingOf(state: State, piece: PieceId): Choice | null {
  const view = layoutView(state, piece)
  if (view.fault) return null
  const says = `${view.isProposed ? 'draw how they lie' : 'see how they lie'}: ${patternName(state, view)}`
  return goTo(says, { at: 'draw', piece, set: 'belongs', placing: null })
}
