import { containersOfStep, type PlanRow, planRows, type Todo, todoOf } from '../../session/views.ts'
import { onTheWayBack, passName, stepName, tighteningName } from '../../words/names.ts'
import { countedPiece, pieceName } from '../../words/pieces.ts'
import { containerName } from '../../words/places.ts'
import { reasonText } from '../../words/reasons.ts'
import type { Command } from '../act.ts'
import { type Choice, choicesOf, goTo, type Large, type Page, rowsOf } from '../page.ts'
import { chip } from '../signs.ts'
import { blank, type Line, line, plain, strong } from '../text/line.ts'
import { besideLetters } from './beside.ts'
import { lastLookRows } from './last-look.ts'
import { liesText, nextChoice, takeUp, todoText } from './next.ts'
import { bulleted, groups, headed, indented, numbered } from './rows.ts'
import { perVersion, type Scene, type State } from './scene.ts'
import { stepSign } from './step-signs.ts'
import { tighteningGrid } from './tightening-grid.ts'

type Reason = PlanRow['reasons'][number]

/** One step of the way back: what comes next in it large, all that is still to do, and what keeps it. */
export function stepPage(scene: Scene, no: number): Page {
  const { session, width } = scene
  const { state } = session
  const row = perVersion(session, 'plan', () => planRows(session)).find(({ step }) => step.no === no)
  if (!row) return missingStep(no)
  const todo = perVersion(session, `todo ${no}`, () => todoOf(session, no))
  const isOpen = row.standing === 'underway'
  const numbers = new Numbers(width)
  const open = isOpen && todo.length === 0 ? session.gates().finish(no) : []
  const doing = isOpen ? [...choicesFor(state, no, todo), ...closing(row.step, todo)] : []
  const isLookDue = row.reasons.some(({ code }) => code === 'look-due')
  const rows = groups(
    headed(
      'CAUTION',
      noteRows(scene, no, (kind) => kind === 'caution'),
    ),
    headed(
      'WHY NOT YET',
      row.reasons.flatMap((reason) => reasonRows(state, reason, numbers)),
    ),
    headed(
      'BEFORE IT IS DONE',
      open.flatMap((reason) => reasonRows(state, reason, numbers)),
    ),
    headed(
      'OVERRIDDEN',
      row.overrides.flatMap((reason) => bulleted(reason, width)),
    ),
    gridRows(state, no, todo, width),
    headed(
      'TO DO',
      doing.flatMap((choice) => numbers.add(choice)),
    ),
    headed('LAST LOOK: SEE AND COUNT', isLookDue ? lastLookRows(scene, no) : []),
    headed('THEN', isOpen ? [] : laterRows(state, todo, width)),
    headed('LIES IN', containerRows(scene, no)),
    headed(
      'NOTES',
      noteRows(scene, no, (kind) => kind !== 'caution'),
    ),
    headed(
      'OR TYPE',
      words(row).flatMap((text) => indented(text, width)),
    ),
  )
  return {
    title: line(strong(stepName(state, no)), '  ', chip(stepSign(row))),
    top: todo[0] && isOpen ? nextRows(state, todo[0], width) : [],
    rows: rowsOf(rows),
    enter: isOpen ? enterOpen(scene, row, todo) : enterClosed(scene, row),
    choice: choicesOf(numbers.choices),
    large: todo[0] && isOpen ? largeOf(state, todo[0]) : null,
  }
}

/** Rows that can be chosen, numbered one after the other. */
class Numbers {
  readonly choices = new Map<number, Choice>()
  readonly #width: number

  constructor(width: number) {
    this.#width = width
  }

  add(choice: Choice, text: string = choice.says): Line[] {
    const no = this.choices.size + 1
    this.choices.set(no, choice)
    return numbered(no, text, this.#width)
  }
}

/** A reason; choosing it puts the words of its cure into the line, to be looked at and entered. */
function reasonRows(state: State, reason: Reason, numbers: Numbers): Line[] {
  const text = reasonText(state, reason)
  const cure = /"([^"]*)"/.exec(text)?.[1] ?? ''
  return numbers.add({ says: cure, act: { do: 'write', before: cure.replace(/\.\.\.$/, '') } }, text)
}

function laterRows(state: State, todo: readonly Todo[], width: number): Line[] {
  return todo.flatMap((each) => bulleted(todoText(state, each), width))
}

function noteRows({ session, width }: Scene, no: number, isWanted: (kind: string) => boolean): Line[] {
  const notes = session.state.notes.filter(({ step, kind }) => step === no && isWanted(kind))
  return notes.flatMap(({ kind, text }) =>
    indented([kind === 'caution' ? strong(`! ${text}`) : plain(`${kind}: ${text}`)], width),
  )
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
function doIt(state: State, step: number, todo: Todo): Choice {
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
      // In doubt nobody but the user can know: no key answers for them.
      return next.suspect
        ? inDoubt(next.fastener)
        : send({ do: 'tighten', tightening: tightening.id, fastener: next.fastener })
    }
    case 'fill':
      return { says: `${says}: say how much`, act: { do: 'write', before: `fill ${todo.fluid.name} ` } }
    default:
      return todo satisfies never
  }
}

function inDoubt(fastener: string): Choice {
  return {
    says: `say whether ${fastener} was turned`,
    act: {
      do: 'say',
      what: `Was ${fastener} turned before the work broke off?`,
      cure: 'Look at it, then choose yes or no by number, and say what shows it.',
    },
  }
}

/** Numbers of the things to do, in their order; one in doubt has two answers. */
function choicesFor(state: State, no: number, todo: readonly Todo[]): Choice[] {
  return todo.flatMap((each) => {
    if (each.kind !== 'turn' || !each.next.suspect) return [doIt(state, no, each)]
    const { tightening, next } = each
    return (['yes', 'no'] as const).map((answer) => ({
      says: `${answer}, ${next.fastener} was ${answer === 'yes' ? '' : 'not '}turned: say what shows it`,
      act: { do: 'write', before: `turned ${tightening.id} ${answer} because ` },
    }))
  })
}

/** Steps that find something out: closing them says what. */
function hasResult({ kind }: PlanRow['step']): boolean {
  return kind === 'check' || kind === 'inspect' || kind === 'measure' || kind === 'turn' || kind === 'align'
}

/** The two ways in which a step that finds something out can end. */
function closing(step: PlanRow['step'], todo: readonly Todo[]): Choice[] {
  if (!hasResult(step)) return []
  return todo.length === 0 ? [passes(step.no), fails(step.no)] : [fails(step.no)]
}

function passes(no: number): Choice {
  return {
    says: 'it passes: say what was found, or Enter again',
    act: { do: 'write', before: `done ${no}: ` },
  }
}

function fails(no: number): Choice {
  return { says: 'it does not: say what was found', act: { do: 'write', before: `fail ${no}: ` } }
}

function enterOpen({ session }: Scene, { step }: PlanRow, todo: readonly Todo[]): Choice | null {
  const { state } = session
  const [first] = todo
  if (first) return doIt(state, step.no, first)
  if (hasResult(step)) return passes(step.no)
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

/** The next thing: what hands look for in large letters, the rest beside it. */
function nextRows(state: State, todo: Todo, width: number): Line[] {
  const { letters, under } = largeOf(state, todo)
  return [
    ...besideLetters(
      letters,
      [line(strong(isInDoubt(todo) ? 'IN DOUBT' : `NEXT: ${VERBS[todo.kind]}`)), ...under],
      width,
    ),
    blank,
  ]
}

function isInDoubt(todo: Todo): boolean {
  return todo.kind === 'turn' && todo.next.suspect
}

const VERBS = { turn: 'TURN', fit: 'FIT', 'take-out': 'TAKE OUT', confirm: 'SEE', fill: 'FILL' } as const

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
      return [`"reopen ${step.no} because ..." when it has to come apart again`]
    case 'blocked':
      return [`"override start ${step.no} because ..." when you know better`]
    case 'done':
      return [`"reopen ${step.no} because ..." when it has to come apart again`]
    default:
      return []
  }
}

function largeOf(state: State, todo: Todo): Large {
  switch (todo.kind) {
    case 'turn': {
      const { tightening, next } = todo
      return {
        letters: next.fastener,
        under: [
          line(strong(passName(tightening, next.pass))),
          line(`${next.through} of ${tightening.order.length} through`),
          line(next.suspect ? strong('may have been turned already: 1 yes, 2 no') : tightening.name),
        ],
      }
    }
    case 'fit': {
      const { account, owed, lies } = todo
      const name = pieceName(state, account.piece.id)
      return {
        letters: account.home.position ?? String(owed),
        under: [
          line(strong(account.home.position === undefined ? `× ${name}` : name)),
          line(lies[0] ? liesText(state, lies[0].place) : 'not within reach'),
        ],
      }
    }
    case 'take-out':
      return { letters: 'OUT', under: [line(strong(countedPiece(state, todo.account.piece.id, todo.count)))] }
    case 'confirm': {
      const { text, piece } = todo.mark
      const on = piece === undefined ? [] : [line(`on ${pieceName(state, piece)}`)]
      return { letters: 'SEE', under: [line(strong(text)), ...on] }
    }
    case 'fill':
      return {
        letters: 'FILL',
        under: [line(strong(todo.fluid.name)), line(`${todo.fluid.typed} came out`)],
      }
    default:
      return todo satisfies never
  }
}
