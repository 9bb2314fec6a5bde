import { groupedCode } from '../../label/code.ts'
import { knownSpares } from '../../session/known-spares.ts'
import { codeOf } from '../../session/scan.ts'
import { planRows, trialBalance } from '../../session/views.ts'
import { stepName } from '../../words/names.ts'
import { containerName, containerPlace } from '../../words/places.ts'
import { sparesText } from '../../words/spares-text.ts'
import { toldLeftovers } from '../../words/told-leftovers.ts'
import { type Choice, choicesOf, goTo, type Page, rowsOf } from '../page.ts'
import { chip, chipColumn, SIGNS } from '../signs.ts'
import { type Line, line, plain, strong } from '../text/line.ts'
import { screenOfReason } from './due/screen-of-reason.ts'
import { groups, headed, indented, numbered, withWords } from './rows.ts'
import { cardNow, perVersion, type Scene, type State } from './scene.ts'
import { stepSign } from './step-signs.ts'

type Leftover = ReturnType<typeof trialBalance>[number]

/** What is left over: everything that stands before the first start, and after it the checks. */
export function leftPage(scene: Scene): Page {
  const { session } = scene
  const { state } = session
  const open = perVersion(session, 'left', () => trialBalance(session))
  if (open.length > 0 && !state.started) return notClear(scene, open)
  const choices = new Map<number, Choice>()
  const checks = checkRows(scene, choices)
  const gate = gateChoice(state)
  if (gate) choices.set(gate.no, gate)
  return {
    title: line(strong('WHAT IS LEFT OVER'), '  ', chip(SIGNS.clear)),
    top: [],
    rows: rowsOf(
      groups(
        headed('NOTHING', indented(said(state), scene.width)),
        spareRows(scene),
        gate ? headed('THE NEXT GATE', numbered(gate.no, gate.says, scene.width)) : [],
        headed('CHECKS AFTER THE START', checks),
      ),
    ),
    enter: enterClear(scene),
    choice: choicesOf(choices),
    large: null,
  }
}

const FEW = 8

function notClear(scene: Scene, open: readonly Leftover[]): Page {
  const { session, width } = scene
  const { rows, choices } = perVersion(session, `left rows ${width}`, () => leftRows(scene, open))
  return {
    title: line(
      strong('WHAT IS LEFT OVER'),
      '  ',
      chip(SIGNS.notClear),
      `  ${open.length} before the first start`,
    ),
    top: [],
    rows: rowsOf(rows),
    enter: choices.get(1) ?? null,
    choice: choicesOf(choices),
    large: { letters: String(open.length), under: [line(strong('before the first start'))] },
  }
}

function leftRows(
  { session, width }: Scene,
  open: readonly Leftover[],
): { rows: Line[]; choices: Map<number, Choice> } {
  const state = session.stateNow()
  const code = (no: number) => groupedCode(codeOf(state, no))
  const choices = new Map<number, Choice>()
  const rows = toldLeftovers(state, open, code).map((told, index) => {
    const no = index + 1
    const { leftover, what, where, undo, cure } = told
    const choice = writesCure(leftover, cure) ?? placeOfLeftover(state, leftover)
    if (choice) choices.set(no, choice)
    // "... is still in the machine" is one phrase.
    const join = /\b(?:is|are)$/.test(what) ? ' ' : ', '
    const head = line(strong(what), where === '' ? '' : `${join}${where}`)
    const first = undo === '' ? [] : [strong('First undo: '), plain(`${undo}. `)]
    return [
      ...(choice ? numbered(no, head, width) : indented(head, width)),
      ...indented(line(...first, ...withWords(cure)), width),
    ]
  })
  // A long list is read at a glance, a short one with care.
  const listed = rows.length > FEW ? rows.flat() : groups(...rows)
  return { rows: groups(listed, spareRows({ session, width })), choices }
}

/** What lies there at the end and may, so that it is known for what it is. */
function spareRows({ session, width }: Pick<Scene, 'session' | 'width'>): Line[] {
  const told = sparesText(session.state, knownSpares(session.state))
  return headed(
    'SPARE',
    told.flatMap((text) => indented(line(...withWords(text)), width)),
  )
}

/** What is done with is put away by its cure, not by looking at it again; it stands in the line first. */
function writesCure({ code }: Leftover, cure: string): Choice | null {
  const words = /"([^"]*)"/.exec(cure)?.[1]
  if (words === undefined || (code !== 'old-lying' && code !== 'tool-out')) return null
  return { says: `write ${words}`, act: { do: 'write', before: words } }
}

/** Where to look first: into the container that holds it, else at its step. */
function placeOfLeftover(state: State, leftover: Leftover): Choice | null {
  if (leftover.code === 'count-open') {
    const container = state.differences.get(leftover.difference)?.container
    return container === undefined ? null : goTo('explain the count', { at: 'differences', container })
  }
  if ('place' in leftover) {
    const container = containerPlace(leftover.place)?.container
    if (container !== undefined)
      return goTo(`look into ${containerName(state, container)}`, { at: 'scan', text: String(container) })
  }
  const screen = screenOfReason(state, leftover)
  if (screen) return goTo('see what it waits for', screen)
  const step = stepOfLeftover(state, leftover)
  return step === undefined ? null : goTo(`look at ${stepName(state, step)}`, { at: 'step', step })
}

function stepOfLeftover(state: State, leftover: Leftover): number | undefined {
  if ('step' in leftover) return leftover.step
  switch (leftover.code) {
    case 'mark-open':
      return state.marks.get(leftover.mark)?.step
    case 'tighten-open':
      return state.tightenings.get(leftover.tightening)?.step
    case 'fluid-open':
      return state.fluids.get(leftover.fluid)?.step
    case 'fault-open':
      return state.faults.get(leftover.fault)?.step
    default:
      return undefined
  }
}

function said(state: State): string {
  if (state.closed) return 'The job is closed.'
  if (state.started) return 'The machine has been started.'
  if (state.cleared) return 'The first start is cleared: every piece is home, every aid is out.'
  return 'Every piece is home, every aid is out, every fluid is in, every mark is confirmed.'
}

/** The last gates, each with a number of its own: a finger that bounces opens one and not the next as well. */
function gateChoice(state: State): (Choice & { no: number }) | null {
  if (state.closed) return null
  if (state.started)
    return { no: 3, says: 'close the job', act: { do: 'send', commands: [{ do: 'close-job' }] } }
  if (state.cleared)
    return { no: 2, says: 'the machine was started', act: { do: 'send', commands: [{ do: 'first-start' }] } }
  return { no: 1, says: 'clear it for the first start', act: { do: 'send', commands: [{ do: 'clear' }] } }
}

const FIRST_CHECK = 4

/** The gates of the end are opened by a number and Enter, never by Enter alone. */
function enterClear({ session }: Scene): Choice | null {
  const { next } = cardNow(session)
  if (next.kind === 'check')
    return goTo(`check: ${stepName(session.state, next.step)}`, { at: 'step', step: next.step })
  const gate = gateChoice(session.state)
  if (!gate) return goTo('where you are', { at: 'now' })
  return {
    says: `nothing: ${gate.no} is "${gate.says}"`,
    act: {
      do: 'say',
      what: `${gate.no} and Enter: ${gate.says}.`,
      cure: 'Enter alone opens none of the last gates.',
    },
  }
}

function checkRows({ session, width }: Scene, choices: Map<number, Choice>): Line[] {
  const { state } = session
  const rows = perVersion(session, 'plan', () => planRows(session)).filter(
    ({ step }) => step.way === 'after-start',
  )
  return rows.flatMap((row, index) => {
    const no = index + FIRST_CHECK
    choices.set(no, goTo(`look at ${stepName(state, row.step.no)}`, { at: 'step', step: row.step.no }))
    const due = row.step.due === undefined ? '' : `, due ${row.step.due}`
    return numbered(no, line(...chipColumn(stepSign(row), 14), ' ', stepName(state, row.step.no), due), width)
  })
}
