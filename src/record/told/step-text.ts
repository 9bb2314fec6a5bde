import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { StepStanding } from '../../session/views.ts'
import { arrowCells } from '../../trade/position-drawing/cells.ts'
import { drawLayout } from '../../trade/position-drawing/draw-layout.ts'
import { entryText } from '../../words/entries.ts'
import { litresText } from '../../words/grammar.ts'
import { fluidName, markName, onTheWayBack, stepName } from '../../words/names.ts'
import { liesText } from '../../words/pieces.ts'
import { placeName } from '../../words/places.ts'
import type { AtHome } from '../facts/at-home.ts'
import type { StepRecord } from '../facts/steps.ts'
import { type Line, line } from './line.ts'
import { measuredText } from './measured-text.ts'
import { putOnText } from './put-on-text.ts'
import { seenAgainText } from './seen-again-text.ts'
import { dated, history, numbered, type Telling, withMoves } from './telling.ts'
import { looseningText, tighteningText } from './tightening-text.ts'

/** One step: how it came off, how it went back, and what was owed on the way. */
export function stepText(telling: Telling, step: StepRecord): Line[] {
  const { row, plan, off, back, home } = step
  const isOwn = (piece: PieceId) => telling.state.ledger.accounts.get(piece)?.piece.step === row.step.no
  const standing = row.again ? AGAIN[row.standing] : undefined
  return [
    line(''),
    line(`${stepName(telling.state, row.step.no)} (${standing ?? STANDINGS[row.standing]})`),
    ...titled(
      'plan',
      plan.map((entry) => history(telling, entry, 4)),
    ),
    ...titled(
      'came off',
      off.map((entry) => history(telling, entry, 4)),
    ),
    ...titled('positions', positionsText(telling, step)),
    ...titled(
      'eased in steps',
      step.loosenings.flatMap(({ loosening, history: turns }) => looseningText(telling, loosening, turns)),
    ),
    ...titled('notes', notes(telling, step)),
    ...titled(
      'on the way back',
      back.map((entry) => history(telling, withMoves(entry, isOwn), 4)),
    ),
    ...titled(
      'on the machine',
      home.map((lot) => homeText(telling, lot)),
    ),
    ...titled('not on the machine', owed(telling, step)),
    ...titled('marks', marks(telling, step)),
    ...titled('fluids', fluids(telling, step)),
    ...titled(
      'put on',
      step.putOn.flatMap((one) => putOnText(telling, one)),
    ),
    ...titled('measured', measuredText(telling, step.measures)),
    ...titled(
      'tightened',
      step.tightenings.flatMap(({ tightening, history: turns }) =>
        tighteningText(telling, tightening, turns),
      ),
    ),
    ...titled('seen again', seenAgainText(telling, step.seenAgain)),
  ]
}

const STANDINGS: Record<StepStanding, string> = {
  stripping: 'coming off',
  ready: 'not begun, could start',
  blocked: 'not begun, blocked',
  underway: 'under way',
  done: 'done',
  redo: 'to be done again',
  idle: 'nothing to put back',
}

const AGAIN: Partial<Record<StepStanding, string>> = { blocked: 'to be done again, blocked' }

function titled(title: string, lines: readonly Line[]): Line[] {
  return lines.length > 0 ? [line(`${title}:`, 2), ...lines] : []
}

/** Where positions were drawn, and the drawings that count. */
function positionsText(telling: Telling, { drawn, layouts }: StepRecord): Line[] {
  const pictures = layouts
    .flatMap((layout) => drawLayout(layout, arrowCells(layout.places), { width: 60, height: 40 }).rows)
    .map((row) =>
      row
        .map(({ text }) => text)
        .join('')
        .trimEnd(),
    )
    // An empty row ends a step here.
    .filter((text) => text !== '')
  return [...drawn.map((entry) => history(telling, entry, 4)), ...pictures.map((text) => line(text, 6))]
}

function homeText(telling: Telling, { piece, count, from, entry }: AtHome): Line {
  const { state } = telling
  const comes = from === null ? 'never off the machine' : `from ${placeName(state, from)}`
  return dated(telling, entry, `${numbered(state, piece, count)}${atText(state, piece)}, ${comes}`, 4)
}

/** Where it belongs, as far as neither the step nor the piece's own name says it. */
function atText({ ledger, steps }: State, piece: PieceId): string {
  const account = ledger.accounts.get(piece)
  if (!account) return ''
  const { at, alikeAt = [] } = account.home
  const isSaid = onTheWayBack(steps.get(account.piece.step)?.title ?? '') === at
  const says = [...(isSaid ? [] : [at]), ...(alikeAt.length > 0 ? [alikeAt.join(', ')] : [])]
  return says.length > 0 ? `, at ${says.join(' / ')}` : ''
}

function owed({ state }: Telling, step: StepRecord): Line[] {
  return step.owed.map(({ account: { piece }, count }) =>
    line(`${numbered(state, piece.id, count)} owed; all of it: ${liesText(state, piece.id)}`, 4),
  )
}

/** In its own step a note need not say for which. */
function notes(telling: Telling, step: StepRecord): Line[] {
  return step.notes.map((entry) =>
    dated(telling, entry, entryText(telling.state, { ...entry, step: null }), 4),
  )
}

function marks(telling: Telling, step: StepRecord): Line[] {
  const { state } = telling
  return step.marks.map(({ mark, confirmed }) =>
    confirmed === null
      ? line(`${markName(state, mark.id)}: not confirmed`, 4)
      : dated(telling, confirmed, `${markName(state, mark.id)}: confirmed`, 4),
  )
}

function fluids(telling: Telling, step: StepRecord): Line[] {
  const { state } = telling
  return step.fluids.map(({ fluid, filled }) => {
    const name = fluidName(state, fluid.id)
    if (filled === null) return line(`${name}: not filled`, 4)
    const typed = filled.type === 'filled' ? filled.typed : ''
    return dated(telling, filled, `${name}: ${typed || litresText(fluid.filledLitres ?? 0)} filled`, 4)
  })
}
