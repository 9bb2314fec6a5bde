import { jointQuestions } from '../../session/joint-questions.ts'
import { isLastRound } from '../../session/last-round.ts'
import { untightened } from '../../session/untightened.ts'
import { containersOfStep, type PlanRow, planRows, type Todo, todoOf } from '../../session/views.ts'
import { jointQuestionText } from '../../words/joint-questions.ts'
import { stepName } from '../../words/names.ts'
import { pieceName } from '../../words/pieces.ts'
import { containerName, containerPlace } from '../../words/places.ts'
import { type ToldReason, toldReasons } from '../../words/reason-lines.ts'
import { type Choice, choicesOf, goTo, type Large, NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { chip } from '../signs.ts'
import { type Line, line, plain, strong } from '../text/line.ts'
import { drawChoice } from './draw-choice.ts'
import { screenOfReason } from './due/screen-of-reason.ts'
import { fewerForm } from './fewer-fitted.ts'
import { inLarge } from './large-words.ts'
import { lastLookRows } from './last-look.ts'
import { measuredRows } from './measured-rows.ts'
import { todoText } from './next.ts'
import { picturesChoice } from './pictures-choice.ts'
import { nextWithDrawing } from './position-next.ts'
import { bulleted, groups, headed, indented, numbered } from './rows.ts'
import { type PieceId, perVersion, type Scene, type State } from './scene.ts'
import { secondLookRows } from './second-look-rows.ts'
import { stepChoices, stepEnter } from './step-choices.ts'
import { stepSign } from './step-signs.ts'
import { askedRows, timerRows, timersInBrief } from './timer-rows.ts'
import { stillToTip, tipInBrief, tipRows, toolboxRows } from './tip-rows.ts'
import { todoInLarge } from './todo-in-large.ts'

/** One step of the way back: what comes next in it large, all that is still to do, and what keeps it. */
export function stepPage(scene: Scene, no: number): Page {
  const { session, width } = scene
  const state = session.stateNow()
  const row = perVersion(session, 'plan', () => planRows(session)).find(({ step }) => step.no === no)
  if (!row) return missingStep(no)
  const todo = perVersion(session, `todo ${no}`, () => todoOf(session, no))
  const isOpen = row.standing === 'underway'
  const numbers = new Numbers(width)
  const open = isOpen && todo.length === 0 ? session.gates().finish(no) : []
  const doing = isOpen ? stepChoices(state, row.step, todo) : []
  const isAllDone = isOpen && todo.length === 0 && open.length === 0
  // Once it is closed, whoever reads that they were not tightened has to open it again.
  const loose = isAllDone
    ? untightened(state, no)
        .slice(0, MOST_LOOSE)
        .map(({ piece }) => tighten(state, piece.id))
    : []
  const isRound = isLastRound(state, no) && row.standing !== 'done'
  const isToTip = isRound && stillToTip(state).length > 0
  const pictures = picturesChoice(scene, { step: no })
  const isLookDue = row.reasons.some(({ code }) => code === 'look-due')
  const before = firstRows(scene, row, { open, numbers })
  const fewer = numbers.choices.size === 0 ? fewerForm(doing) : null
  const above = before.length === 0 ? 0 : before.length + 1
  // Drawn once, not with every key: hundreds of bolts take their time.
  const { top, drawn, later, nextAt } = perVersion(
    session,
    `next ${no} ${width} ${scene.height} ${above}`,
    () => nextWithDrawing(scene, no, { todo: isOpen ? todo : [], above }),
  )
  const draw = drawChoice(state, no, todo)
  const measured = headed('MEASURED', measuredRows(state, no, width))
  const rows = groups(
    before,
    drawn,
    // Their numbers come first: each is said by one.
    headed(
      isOpen ? 'TIP OUT EACH: EMPTY, ITS NUMBER; NOT EMPTY, SCAN IT' : 'TIP OUT, ONE AFTER THE OTHER',
      isRound ? tipRows(scene, isOpen, (choice, text) => numbers.add(choice, text)) : [],
    ),
    headed(
      isOpen ? 'LOOK INTO THE TOOLBOX: ONE NOT THERE, ITS NUMBER' : 'LOOK INTO THE TOOLBOX',
      isRound ? toolboxRows(scene, isOpen, (choice, text) => numbers.add(choice, text)) : [],
    ),
    isAllDone && !isToTip ? allDoneRows(doing.length > 0) : [],
    headed(
      'NO TIGHTENING IS IN THE RECORD',
      loose.flatMap((choice) => numbers.add(choice)),
    ),
    headed(
      fewer === null ? 'TO DO' : `TO DO: ${fewer}`,
      doing.flatMap((choice) => numbers.add(choice)),
    ),
    headed('LAST LOOK: SEE AND COUNT', isLookDue ? lastLookRows(scene, no) : []),
    secondLookRows(scene, no, (choice, text) => numbers.add(choice, text)),
    // What is out of its limits has to be seen before it is closed over.
    isOpen ? [] : measured,
    headed('THEN', isOpen ? [] : laterRows(state, todo, width)),
    headed('PUT ON IN IT', askedRows(scene, no)),
    headed('LIES IN', containerRows(scene, no, todo)),
    later,
    headed(
      'ASKED OF THE MANUAL',
      perVersion(session, `asked ${no} ${width}`, () => questionRows(state, no, width)),
    ),
    isOpen ? measured : [],
    draw ? numbers.add(draw) : [],
    pictures ? numbers.add(pictures) : [],
    headed(
      'NOTES',
      noteRows(scene, no, (kind) => kind !== 'caution'),
    ),
    headed(
      'OR TYPE',
      words(state, row).flatMap((text) => indented(text, width)),
    ),
  )
  return {
    title: line(strong(stepName(state, no)), '  ', chip(stepSign(row))),
    top,
    rows: rowsOf(rows),
    // A long drawing begins a little before the next fastener.
    start: nextAt === null ? undefined : Math.max(0, above + nextAt - ROWS_BEFORE),
    enter: stepEnter(scene, row, todo),
    choice: choicesOf(numbers.choices),
    large: largeOf(scene, row, { todo, open }),
  }
}

/** What is seen before anything is done: the time that runs, what to beware of, and what keeps the step. */
function firstRows(
  scene: Scene,
  { step: { no }, reasons, overrides }: PlanRow,
  { open, numbers }: { open: PlanRow['reasons']; numbers: Numbers },
): Line[] {
  const state = scene.session.stateNow()
  return groups(
    headed('TIME RUNS', timerRows(scene, no)),
    headed(
      'CAUTION',
      noteRows(scene, no, (kind) => kind === 'caution'),
    ),
    headed(
      'WHY NOT YET',
      toldReasons(state, reasons).flatMap((told) => reasonRows(state, told, numbers)),
    ),
    headed(
      'BEFORE IT IS DONE',
      toldReasons(state, open).flatMap((told) => reasonRows(state, told, numbers)),
    ),
    headed(
      'OVERRIDDEN',
      overrides.flatMap((reason) => bulleted(reason, scene.width)),
    ),
  )
}

/** The next thing, and how long busy hands have for it; else how the step stands, and the first reason why. */
function largeOf(
  scene: Scene,
  row: PlanRow,
  { todo, open }: { todo: readonly Todo[]; open: PlanRow['reasons'] },
): Large {
  const state = scene.session.stateNow()
  const { no, title } = row.step
  const [next] = todo
  if (next && row.standing === 'underway') return todoInLarge(state, next, timersInBrief(scene, no))
  const [bag] = row.standing === 'underway' && isLastRound(state, no) ? stillToTip(state) : []
  if (bag && open.length === 0)
    return inLarge(containerName(state, bag.container).toUpperCase(), tipInBrief(state, bag))
  const [why] = toldReasons(state, [...row.reasons, ...open])
  return inLarge(`STEP ${no}`, [[chip(stepSign(row))], title, why?.text ?? ''])
}

const ROWS_BEFORE = 4

const MOST_LOOSE = 9

/** What the manual says of fasteners of which the record asks nothing: typed, for nobody else knows it. */
function tighten(state: State, id: PieceId): Choice {
  return {
    says: `${pieceName(state, id)}: say what the manual asks`,
    act: { do: 'write', before: `tighten ${id}: `, asks: 'Type what the manual says, as: 10 Nm, 22 Nm' },
  }
}

/** So that nobody looks for the next thing where there is none. */
function allDoneRows(hasResult: boolean): Line[] {
  const cure = hasResult ? 'Say what was found.' : 'Look it over once more; Enter closes it.'
  return [line(strong('NOTHING LEFT TO DO HERE')), line(`     ${cure}`)]
}

/** Rows that can be chosen, numbered one after the other. */
class Numbers {
  readonly choices = new Map<number, Choice>()
  readonly #width: number

  constructor(width: number) {
    this.#width = width
  }

  add(choice: Choice, text: Line | string = choice.says): Line[] {
    const no = this.choices.size + 1
    this.choices.set(no, choice)
    return numbered(no, text, this.#width)
  }
}

/** A reason; choosing it leads to its page, or puts the words of its cure into the line, to be looked at and entered. */
function reasonRows(state: State, { reason, text }: ToldReason, numbers: Numbers): Line[] {
  const screen = screenOfReason(state, reason)
  if (screen) return numbers.add(goTo('see what it waits for', screen), text)
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
    choice: NO_CHOICES,
    large: null,
  }
}

/** What is worth asking about the tightenings that are open, until all is turned. */
function questionRows(state: State, no: number, width: number): Line[] {
  return [...state.tightenings.values()]
    .filter(({ step, done, order }) => step === no && done.some(({ size }) => size < order.length))
    .flatMap((tightening) =>
      jointQuestions(state, tightening).flatMap((question) =>
        bulleted(jointQuestionText(tightening.id, question), width),
      ),
    )
}

/** The containers to fetch; once all is home, those that still hold something of the step. */
function containerRows({ session, width }: Scene, no: number, todo: readonly Todo[]): Line[] {
  const { state } = session
  const places = todo.flatMap((each) => (each.kind === 'fit' ? each.lies.map(({ place }) => place) : []))
  const wanted = new Set(places.map((place) => containerPlace(place)?.container))
  const all = containersOfStep(state, no)
  const shown = places.length > 0 ? all.filter((container) => wanted.has(container)) : all
  return shown.flatMap((container) => indented(containerName(state, container), width))
}

/** What can be typed here beyond the numbers. */
function words(state: State, { step, standing }: PlanRow): string[] {
  const [bag] = isLastRound(state, step.no) ? stillToTip(state) : []
  switch (standing) {
    case 'underway':
      return [
        ...(bag ? [`"count ${bag.container} = 1" when one is in it, or scan it`] : []),
        `"reopen ${step.no} because ..." when it has to come apart again`,
      ]
    case 'blocked':
      return [`"override start ${step.no} because ..." when you know better`]
    case 'done':
      return [`"reopen ${step.no} because ..." when it has to come apart again`]
    case 'redo':
      return step.needs.map((no) => `"reopen ${no} because ..." when step ${no} has to come apart again`)
    default:
      return []
  }
}
