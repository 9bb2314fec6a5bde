import { containersOfStep, type PlanRow, planRows, type Todo, todoOf } from '../../session/views.ts'
import { onTheWayBack, passName, stepName, tighteningName } from '../../words/names.ts'
import { countedPiece, pieceName } from '../../words/pieces.ts'
import { containerName } from '../../words/places.ts'
import { reasonText } from '../../words/reasons.ts'
import type { Command } from '../act.ts'
import { type Choice, choicesOf, goTo, type Large, type Page, rowsOf } from '../page.ts'
import { chip } from '../signs.ts'
import { type Line, line, strong } from '../text/line.ts'
import { nextChoice, takeUp, todoText } from './next.ts'
import { groups, headed, indented, numbered } from './rows.ts'
import { type PieceId, perVersion, type Scene, type State } from './scene.ts'
import { stepSign } from './step-signs.ts'
import { tighteningGrid } from './tightening-grid.ts'

/** One step of the way back: what comes next in it large, all that is still to do, and what keeps it. */
export function stepPage(scene: Scene, no: number): Page {
  const { session, width } = scene
  const { state } = session
  const row = perVersion(session, 'plan', () => planRows(session)).find(({ step }) => step.no === no)
  if (!row) return missingStep(no)
  const todo = perVersion(session, `todo ${no}`, () => todoOf(session, no))
  const isOpen = row.standing === 'underway'
  const choices = new Map<number, Choice>(todo.map((each, index) => [index + 1, doIt(state, no, each)]))
  const enter = isOpen ? enterOpen(scene, row, todo) : enterClosed(scene, row)
  const finish = isOpen ? session.gates().finish(no) : []
  return {
    title: line(strong(stepName(state, no)), '  ', chip(stepSign(row))),
    top: todo[0] && isOpen ? nextRows(state, todo[0], width) : [],
    rows: rowsOf(
      groups(
        headed(
          'WHY NOT YET',
          row.reasons.flatMap((reason) => indented(`· ${reasonText(state, reason)}`, width)),
        ),
        headed(
          'OVERRIDDEN',
          row.overrides.flatMap((reason) => indented(`· ${reason}`, width)),
        ),
        gridRows(state, no, todo, width),
        headed(
          'TO DO',
          todo.flatMap((each, index) => numbered(index + 1, todoText(state, each), width)),
        ),
        isOpen && todo.length === 0
          ? headed(
              'BEFORE IT IS DONE',
              finish.flatMap((reason) => indented(`· ${reasonText(state, reason)}`, width)),
            )
          : [],
        headed('LIES IN', containerRows(scene, no)),
        headed(
          'NOTES',
          state.notes
            .filter((note) => note.step === no)
            .flatMap((note) => indented(`${note.kind}: ${note.text}`, width)),
        ),
        headed(
          'OR TYPE',
          words(row).flatMap((text) => indented(text, width)),
        ),
      ),
    ),
    enter,
    choice: choicesOf(choices),
    large: isOpen ? largeOf(state, todo[0]) : null,
  }
}

function missingStep(no: number): Page {
  return {
    title: line(strong(`STEP ${no}`)),
    top: [],
    rows: rowsOf([line(`     There is no step ${no}.`)]),
    enter: goTo('what goes back', { at: 'back' }),
    choice: () => undefined,
    large: null,
  }
}

/** What doing one thing of a step means. What needs a value or a reason goes into the line to be completed. */
export function doIt(state: State, step: number, todo: Todo): Choice {
  const says = todoText(state, todo)
  const send = (command: Command): Choice => ({ says, act: { do: 'send', commands: [command] } })
  switch (todo.kind) {
    case 'take-out':
      return send({
        do: 'move',
        piece: todo.account.piece.id,
        count: todo.count,
        from: 'machine',
        into: { kind: 'place', place: 'toolbox' },
      })
    case 'fit': {
      const { piece, home } = todo.account
      return send({ do: 'fit', step, fittings: [{ piece: piece.id, position: home.position }] })
    }
    case 'confirm':
      return send({ do: 'confirm', mark: todo.mark.id })
    case 'turn': {
      const { tightening, next } = todo
      if (!next.suspect) return send({ do: 'tighten', tightening: tightening.id, fastener: next.fastener })
      // Nobody but the user can know: no key may answer for them.
      return {
        says: `say whether ${next.fastener} was turned: yes or no, and why`,
        act: { do: 'write', before: `turned ${tightening.id} `, after: ' because ' },
      }
    }
    case 'fill':
      return { says: `${says}: say how much`, act: { do: 'write', before: `fill ${todo.fluid.name} ` } }
    default:
      return todo satisfies never
  }
}

function enterOpen({ session }: Scene, { step }: PlanRow, todo: readonly Todo[]): Choice | null {
  const { state } = session
  const [first] = todo
  if (first) return doIt(state, step.no, first)
  return {
    says: `${onTheWayBack(step.title)} is done`,
    act: { do: 'send', commands: [{ do: 'close-step', step: step.no }] },
  }
}

function enterClosed(scene: Scene, row: PlanRow): Choice | null {
  const { state } = scene.session
  const { step, standing, reasons } = row
  if (standing === 'ready' || standing === 'redo') return takeUp(state, step.no)
  if (standing === 'stripping') return goTo('go on taking it off', { at: 'off' })
  if (standing === 'done' || standing === 'idle') return nextChoice(scene)
  if (reasons.length > 0 && reasons.every(({ code }) => code === 'look-due')) {
    return {
      says: 'all beneath is in place, counted, clean, nothing left inside',
      act: { do: 'send', commands: [{ do: 'look', step: step.no }] },
    }
  }
  return goTo('what goes back', { at: 'back' })
}

/** The next thing, standing out above everything else. */
function nextRows(state: State, todo: Todo, width: number): Line[] {
  return indented(line(strong(`NEXT  ${todoText(state, todo)}`)), width)
}

function gridRows(state: State, no: number, todo: readonly Todo[], width: number): Line[] {
  const turn = todo.find((each) => each.kind === 'turn')
  const shown = turn?.tightening ?? [...state.tightenings.values()].find(({ step }) => step === no)
  if (!shown) return []
  const title = tighteningName(state, shown.id)
  return headed(`TIGHTENING ${title}`, tighteningGrid(shown, turn?.next ?? null, width))
}

function containerRows({ session, width }: Scene, no: number): Line[] {
  const { state } = session
  return containersOfStep(state, no).flatMap((container) => indented(containerName(state, container), width))
}

/** What can be typed here beyond the numbers. */
function words({ step, standing }: PlanRow): string[] {
  switch (standing) {
    case 'underway':
      return step.kind === 'refit'
        ? [`"reopen ${step.no} because ..."`]
        : [`"fail ${step.no}: ..." when it does not pass`, `"done ${step.no}: ..." with what was found`]
    case 'blocked':
      return [`"override start ${step.no} because ..." when you know better`]
    case 'done':
      return [`"reopen ${step.no} because ..." when it has to come apart again`]
    default:
      return []
  }
}

function largeOf(state: State, todo: Todo | undefined): Large | null {
  if (!todo) return null
  switch (todo.kind) {
    case 'turn': {
      const { tightening, next } = todo
      return {
        letters: next.fastener,
        under: [
          line(
            strong(passName(tightening, next.pass)),
            `  ${next.through} of ${tightening.order.length} through`,
          ),
          line(next.suspect ? 'may have been turned already' : tightening.name),
        ],
      }
    }
    case 'fit': {
      const { piece, home } = todo.account
      return {
        letters: home.position ?? String(todo.owed),
        under: [line(strong(fitWords(state, piece.id, todo.owed)))],
      }
    }
    case 'take-out':
      return { letters: 'OUT', under: [line(strong(countedPiece(state, todo.account.piece.id, todo.count)))] }
    case 'confirm':
      return { letters: todo.mark.id, under: [line(strong(todo.mark.text))] }
    case 'fill':
      return { letters: `${todo.fluid.litresOut} L`, under: [line(strong(`fill ${todo.fluid.name}`))] }
    default:
      return todo satisfies never
  }
}

function fitWords(state: State, piece: PieceId, owed: number): string {
  return owed === 1 ? pieceName(state, piece) : `× ${pieceName(state, piece)}`
}
