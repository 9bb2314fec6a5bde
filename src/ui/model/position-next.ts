import type { Todo } from '../../session/views.ts'
import { tighteningName } from '../../words/names.ts'
import { roomBetweenRules } from '../layout.ts'
import { blank, type Line, line, strong, wrap } from '../text/line.ts'
import { nextRows, nextTold } from './next-told.ts'
import { fitRows } from './position-fit.ts'
import { stageRows } from './position-stage.ts'
import { headed } from './rows.ts'
import type { Scene, State } from './scene.ts'

interface NextWithDrawing {
  /** What comes next, in large letters where they leave room for the drawing. */
  top: Line[]
  /** The drawing that goes with it: where pieces go, or the tightening that is at hand. */
  drawn: Line[]
  /** A tightening that is not at hand: it comes later, or is through. */
  later: Line[]
  /** The row of the drawing with the next fastener, where it may be out of sight. */
  nextAt: number | null
}

/** What comes next in a step under way, with the drawing that shows where. `above` rows stand between the two. */
export function nextWithDrawing(
  { session: { state }, width, height }: Scene,
  step: number,
  { todo, above }: { todo: readonly Todo[]; above: number },
): NextWithDrawing {
  const [first] = todo
  const turn = todo.find((each) => each.kind === 'turn')
  const joint = turn?.tightening ?? [...state.tightenings.values()].find((each) => each.step === step)
  const stage = (room: number) => joint && stageRows(state, joint, { width, height: room })
  const titled = (rows: readonly Line[]) =>
    joint ? headed(`TIGHTENING ${tighteningName(state, joint.id)}`, rows) : []
  const large = first ? nextRows(state, first, width) : []
  const room = roomBetweenRules(height) - above - 1
  const roomBesideLarge = Math.min(room - large.length, MOST_BESIDE_LARGE)
  if (first?.kind !== 'turn') {
    const fit = first?.kind === 'fit' ? fitRows(state, first, width) : []
    // A bolt that keeps from its torque is put right where it sits.
    const isAtHand = first?.kind === 'settle' && first.fault.in?.tightening === joint?.id
    const rows = titled(stage(isAtHand ? roomBesideLarge : MOST_ROWS)?.rows ?? [])
    return { top: large, drawn: isAtHand ? rows : fit, later: isAtHand ? [] : rows, nextAt: null }
  }
  const besideLarge = stage(roomBesideLarge)
  if (!besideLarge || besideLarge.fits)
    return { top: large, drawn: titled(besideLarge?.rows ?? []), later: [], nextAt: null }
  const brief = inBrief(state, first, width)
  const { rows, nextAt } = stage(room - brief.length) ?? besideLarge
  return { top: brief, drawn: titled(rows), later: [], nextAt: nextAt === null ? null : nextAt + 1 }
}

/** On a large terminal what can be done next has to be in sight too. */
const MOST_BESIDE_LARGE = 26

/** Where nothing presses: taller drawings are drawn closer. */
const MOST_ROWS = 12

/** The next fastener on a row or two: its place in the drawing is large enough. */
function inBrief(state: State, todo: Todo, width: number): Line[] {
  const { letters, under } = nextTold(state, todo)
  const [pass = blank, ...more] = under
  const rest = more.flatMap((row) => [...line(', '), ...row])
  return [...wrap(line(strong(`     NEXT: ${letters}   `), ...pass, ...rest), width, 5), blank]
}
