import type { Todo } from '../../session/views.ts'
import { tighteningName } from '../../words/names.ts'
import { roomBetweenRules } from '../layout.ts'
import { blank, type Line, line, strong, wrap } from '../text/line.ts'
import { nextInLarge, nextRows } from './next-in-large.ts'
import { fitRows } from './position-fit.ts'
import { stageRows } from './position-stage.ts'
import { headed } from './rows.ts'
import type { Scene, State } from './scene.ts'

interface NextWithDrawing {
  /** What comes next, in large letters where they leave room for the drawing. */
  top: Line[]
  /** The drawing that goes with it: where pieces go, how far a tightening has come. */
  drawn: Line[]
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
  if (first?.kind !== 'turn') {
    const fit = first?.kind === 'fit' ? fitRows(state, first, width) : []
    const later = titled(stage(MOST_ROWS)?.rows ?? [])
    const apart = fit.length > 0 && later.length > 0 ? [blank] : []
    return { top: large, drawn: [...fit, ...apart, ...later], nextAt: null }
  }
  const room = roomBetweenRules(height) - above - 1
  const besideLarge = stage(room - large.length)
  if (!besideLarge || besideLarge.fits)
    return { top: large, drawn: titled(besideLarge?.rows ?? []), nextAt: null }
  const brief = inBrief(state, first, width)
  const { rows, nextAt } = stage(room - brief.length) ?? besideLarge
  return { top: brief, drawn: titled(rows), nextAt: nextAt === null ? null : nextAt + 1 }
}

/** Where nothing presses: taller drawings are drawn closer. */
const MOST_ROWS = 12

/** The next fastener on a row or two: its place in the drawing is large enough. */
function inBrief(state: State, todo: Todo, width: number): Line[] {
  const { letters, under } = nextInLarge(state, todo)
  const [pass = blank, ...more] = under
  const rest = more.flatMap((row) => [...line(', '), ...row])
  return [...wrap(line(strong(`     NEXT: ${letters}   `), ...pass, ...rest), width, 5), blank]
}
