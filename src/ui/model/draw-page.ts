import { type LayoutView, layoutView } from '../../session/layout-view.ts'
import { type PositionSet, positionCells } from '../../session/position-cells.ts'
import type { PositionLayout } from '../../trade/position-layout/position-layout.ts'
import { patternTrouble } from '../../words/pattern-troubles.ts'
import { patternName, placeInBrief } from '../../words/position-drawing.ts'
import type { Told } from '../../words/told.ts'
import type { Command } from '../act.ts'
import { type Direction, PLACING_BEGINS } from '../controls/placing.ts'
import { roomBetweenRules } from '../layout.ts'
import { BACK, type Choice, choicesOf, NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { line, strong } from '../text/line.ts'
import { type DrawScreen, drawingQuestion, record } from './draw-answer.ts'
import { placingPage } from './position-placing.ts'
import { positionRows } from './position-rows.ts'
import { flowed, groups, headed, indented, toldRows } from './rows.ts'
import type { Scene } from './scene.ts'

/** Where the positions of a pattern lie: shown, drawn anew by a typed form, or placed one after the other. */
export function drawPage(scene: Scene, screen: DrawScreen): Page {
  const { state } = scene.session
  // Taken back while one looked at it, here or elsewhere.
  if (!state.ledger.accounts.has(screen.piece)) return noPattern(scene, GONE)
  const view = layoutView(state, screen.piece)
  if (view.fault || !view.layout)
    return noPattern(scene, view.fault ? patternTrouble(state, view.fault) : NOTHING)
  const { placing } = screen
  return placing ? placingPage(scene, { ...screen, placing }, view) : shown(scene, screen, view, view.layout)
}

function shown(scene: Scene, screen: DrawScreen, view: LayoutView, layout: PositionLayout): Page {
  const { session, width, height } = scene
  const { state } = session
  const choices = new Map([...ways(screen, view), ...arrows(screen, view, layout)])
  const under = groups(
    headed(
      'ANOTHER WAY',
      flowed(
        [...choices].filter(([no]) => no <= LAST_WAY),
        width,
      ),
    ),
    headed(
      'THEIR ARROWS POINT',
      flowed(
        [...choices].filter(([no]) => no > LAST_WAY),
        width,
      ),
    ),
    headed('OR TYPE', indented(forms(view), width)),
  )
  const cells = positionCells(view, screen.set, (place) => placeInBrief(state, place))
  const room = Math.max(LEAST_ROWS, roomBetweenRules(height) - under.length - 1)
  const { rows, note } = positionRows(layout, cells, { width, height: room })
  return {
    title: line(
      strong(TITLES[screen.set]),
      `  ${patternName(state, view)}`,
      view.isProposed ? ', proposed from the names alone' : '',
    ),
    top: [],
    rows: rowsOf(groups([...rows, ...note], under)),
    enter: view.isProposed ? { says: 'this is how they lie: record it', act: record(screen, layout) } : BACK,
    choice: choicesOf(choices),
    question: drawingQuestion(screen, view),
    large: null,
  }
}

/** What a drawing says at its positions, over it. */
const TITLES: Record<PositionSet, string> = {
  belongs: 'WHERE THEY BELONG',
  lies: 'WHERE THEY ARE NOW',
  order: 'ORDER OF TIGHTENING',
}

/** A drawing is never squeezed into fewer rows. */
const LEAST_ROWS = 6

function ways(screen: DrawScreen, view: LayoutView): [number, Choice][] {
  const show = (set: PositionSet, says: string): Choice => ({
    says,
    act: { do: 'turn', to: { ...screen, set } },
  })
  const isSet = { belongs: true, lies: view.lies.size > 0, order: view.order.length > 0 }
  const all: [number, PositionSet, string][] = [
    [2, 'belongs', 'what belongs where'],
    [3, 'lies', 'where they are now'],
    [4, 'order', 'the order of tightening'],
  ]
  return [
    [
      1,
      {
        says: 'place them with the arrow keys',
        act: { do: 'turn', to: { ...screen, placing: PLACING_BEGINS } },
      },
    ],
    ...all
      .filter(([, set]) => set !== screen.set && isSet[set])
      .map(([no, set, says]): [number, Choice] => [no, show(set, says)]),
  ]
}

const LAST_WAY = 4

/** Recorded with the drawing: of a proposal, that it is one has ended then. */
function arrows(screen: DrawScreen, view: LayoutView, layout: PositionLayout): [number, Choice][] {
  const { piece } = screen
  const positions = layout.places.map(({ position }) => position)
  const pointing = (arrow: Direction): Command =>
    view.isProposed ? { do: 'lay-out', piece, layout, arrow } : { do: 'point', piece, positions, arrow }
  return (['up', 'right', 'down', 'left'] as const).map((arrow, index) => [
    LAST_WAY + 1 + index,
    { says: arrow, act: { do: 'send', commands: [pointing(arrow)] } },
  ])
}

function forms({ positions }: LayoutView): string {
  return `"row", "2x${Math.ceil(positions.length / 2)}" rows by columns, "circle" clockwise from the top, or row by row "1 2 / . 3"`
}

const GONE: Told = {
  what: 'What was drawn here is not in the record any more: its entry was taken back.',
  lines: [],
  cure: '"redo" brings it back.',
}

const NOTHING: Told = { what: '', lines: [], cure: '' }

function noPattern({ width }: Scene, { what, lines, cure }: Told): Page {
  return {
    title: line(strong('WHERE THEY LIE')),
    top: [],
    rows: rowsOf([what, ...lines, cure].flatMap((text) => toldRows(text, width))),
    enter: BACK,
    choice: NO_CHOICES,
    large: null,
  }
}
