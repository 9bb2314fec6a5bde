import type { LayoutView } from '../../session/layout-view.ts'
import { patternName } from '../../words/position-drawing.ts'
import type { Act } from '../act.ts'
import { windowAt } from '../controls/list-window.ts'
import {
  type Direction,
  layoutPlaced,
  moved,
  type Placing,
  placedHere,
  tookBack,
  underCursor,
} from '../controls/placing.ts'
import { roomBetweenRules } from '../layout.ts'
import { type Choice, choicesOf, type Page, rowsOf } from '../page.ts'
import { blank, drawn, type Line, line, strong, widthOf } from '../text/line.ts'
import { besideLetters } from './beside.ts'
import { type DrawScreen, drawingQuestion, record } from './draw-answer.ts'
import { flowed, headed } from './rows.ts'
import type { Scene } from './scene.ts'

type PlacingScreen = DrawScreen & {
  placing: Placing & { arrow?: Direction | undefined }
}

/** Positions placed one after the other: arrow keys move over a grid, Enter places, Backspace takes the last back. */
export function placingPage(scene: Scene, screen: PlacingScreen, view: LayoutView): Page {
  const { width, height, session } = scene
  const { placing } = screen
  const { length } = placing.placed
  const next = view.positions[length]?.position
  const turn = (to: Placing): Act => ({
    do: 'turn',
    to: { ...screen, placing: { ...to, ...(placing.arrow && { arrow: placing.arrow }) } },
  })
  const choices = new Map(
    (['up', 'right', 'down', 'left'] as const).map((arrow, index): [number, Choice] => [
      index + 1,
      { says: arrow, act: { do: 'turn', to: { ...screen, placing: { ...placing, arrow } } } },
    ]),
  )
  const told = [
    line(strong(next === undefined ? 'ALL ARE PLACED' : `PLACE: ${next}`)),
    line(`${length} of ${view.positions.length} are placed`),
    line(next === undefined ? 'Enter records it' : 'arrow keys move, Enter places it'),
    line('Backspace takes the last back'),
    line(`or type "2x${Math.ceil(view.positions.length / 2)}", "circle", "1 2 / . 3"`),
  ]
  const top = [...besideLetters(next ?? 'ALL', told, width), blank]
  const under = headed(
    placing.arrow ? `THEIR ARROWS POINT ${placing.arrow.toUpperCase()}; OR` : 'THEIR ARROWS POINT, IF ANY',
    flowed(choices, width),
  )
  const grid = gridRows(placing, view, {
    width,
    height: roomBetweenRules(height) - top.length - under.length - 1,
  })
  return {
    title: line(
      strong('WHERE THEY LIE'),
      `  ${patternName(session.state, view)}, as seen by who stands before them`,
    ),
    top,
    rows: rowsOf([...grid, blank, ...under]),
    enter: enter(screen, next, turn),
    choice: choicesOf(choices),
    question: drawingQuestion(screen, view),
    keys: {
      up: turn(moved(placing, 'up')),
      right: turn(moved(placing, 'right')),
      down: turn(moved(placing, 'down')),
      left: turn(moved(placing, 'left')),
      ...(length > 0 && { back: turn(tookBack(placing)) }),
    },
    large: null,
  }
}

function enter(screen: PlacingScreen, next: string | undefined, turn: (to: Placing) => Act): Choice {
  const { placing } = screen
  if (next === undefined) return { says: 'record it', act: record(screen, layoutPlaced(placing)) }
  const here = underCursor(placing)
  if (here === null) return { says: `${next} lies here`, act: turn(placedHere(placing, next)) }
  return {
    says: `nothing: ${here} lies here`,
    act: { do: 'say', what: `${here} lies here already.`, cure: 'The arrow keys move to a free place.' },
  }
}

/** The part of the grid around the cursor that there is room for. */
function gridRows(
  { cursor, placed }: Placing,
  { positions }: LayoutView,
  { width, height }: { width: number; height: number },
): Line[] {
  const cell = Math.max(...positions.map(({ position }) => widthOf(position))) + 2
  const columns = shownOf(
    [...placed, cursor].map(({ x }) => x),
    cursor.x,
    Math.floor((width - INDENT) / cell),
  )
  const rows = shownOf(
    [...placed, cursor].map(({ y }) => y),
    cursor.y,
    Math.max(LEAST, height),
  )
  return rows.map((y) => [
    drawn(' '.repeat(INDENT)),
    ...columns.map((x) => {
      const name = placed.find((at) => at.x === x && at.y === y)?.position ?? '·'
      const space = ' '.repeat(Math.max(0, cell - 2 - widthOf(name)))
      return x === cursor.x && y === cursor.y ? strong(`[${name}]${space}`) : drawn(` ${name} ${space}`)
    }),
  ])
}

const INDENT = 4
const LEAST = 3

/** The columns or rows to be shown: all that hold something and one beyond, as far as there is room, with the cursor. */
function shownOf(used: readonly number[], cursor: number, most: number): number[] {
  const wanted = Math.max(...used, LEAST - 1) + 2
  const { first, count } = windowAt(wanted, Math.min(most, wanted), cursor - Math.floor(most / 2))
  return Array.from({ length: count }, (_, index) => first + index)
}
