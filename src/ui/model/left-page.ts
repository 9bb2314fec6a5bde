import { readLine } from '../../lines/read-line.ts'
import { proposedRound } from '../../session/last-round.ts'
import { isEmptyRecord, planRows, trialBalance } from '../../session/views.ts'
import { LAST_ROUND_WHY } from '../../words/lain-in.ts'
import { stepName } from '../../words/names.ts'
import { type Choice, choicesOf, goTo, NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { chip, chipColumn, SIGNS } from '../signs.ts'
import { type Line, line, strong } from '../text/line.ts'
import { inLarge } from './large-words.ts'
import { type Leftover, leftRows, spareRows } from './left-rows.ts'
import { groups, headed, indented, numbered } from './rows.ts'
import { cardNow, perVersion, type Scene, type State } from './scene.ts'
import { stepSign } from './step-signs.ts'

/** What is left over: everything that stands before the first start, and after it the checks. */
export function leftPage(scene: Scene): Page {
  const { session } = scene
  const { state } = session
  const open = perVersion(session, 'left', () => trialBalance(session))
  if (open.length > 0) return notClear(scene, open)
  if (isEmptyRecord(state)) return nothingOff(scene)
  const choices = new Map<number, Choice>()
  const checks = checkRows(scene, choices)
  const gate = gateChoice(state)
  if (gate) choices.set(gate.no, gate)
  const round = roundChoice(state)
  if (round) choices.set(ROUND, round)
  return {
    title: line(strong('WHAT IS LEFT OVER'), '  ', chip(SIGNS.clear)),
    top: [],
    rows: rowsOf(
      groups(
        headed('NOTHING', indented(said(state), scene.width)),
        spareRows(scene),
        headed('THE NEXT GATE', [
          ...(gate ? numbered(gate.no, gate.says, scene.width) : []),
          ...(round ? numbered(ROUND, round.says, scene.width) : []),
        ]),
        headed('CHECKS AFTER THE START', checks),
      ),
    ),
    enter: enterClear(scene),
    choice: choicesOf(choices),
    large: inLarge(SIGNS.clear.word, [[chip(SIGNS.clear)], gateText(scene)]),
  }
}

function notClear(scene: Scene, open: readonly Leftover[]): Page {
  const { session, width } = scene
  const { rows, choice } = perVersion(session, `left rows ${width}`, () => leftRows(scene, open))
  const when = session.state.started ? 'since the first start' : 'before the first start'
  return {
    title: line(strong('WHAT IS LEFT OVER'), '  ', chip(SIGNS.notClear), `  ${open.length} ${when}`),
    top: [],
    rows,
    enter: choice(1) ?? null,
    choice,
    large: inLarge(`${open.length} LEFT`, [when]),
  }
}

/** An empty balance over an empty record: most likely it is the wrong job, and nothing is clear. */
function nothingOff(scene: Scene): Page {
  return {
    title: line(strong('WHAT IS LEFT OVER'), '  ', chip(SIGNS.idle)),
    top: [],
    rows: rowsOf(indented('Nothing has come off yet in this job.', scene.width)),
    enter: goTo('where you are', { at: 'now' }),
    choice: NO_CHOICES,
    large: inLarge('NOTHING', ['has come off yet in this job']),
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

/** A last round, where none is in the job yet. */
function roundChoice(state: State): Choice | null {
  const no = state.cleared || state.started || state.closed ? null : proposedRound(state)
  const reading = no === null ? null : readLine(`accept ${no}`, state)
  if (reading?.kind !== 'commands') return null
  return {
    says: `before that, a last round: ${LAST_ROUND_WHY}`,
    act: { do: 'send', commands: reading.commands },
  }
}

/** What comes next at the end of the job, for large letters. */
function gateText(scene: Scene): string {
  const { next } = cardNow(scene.session)
  const gate = gateChoice(scene.session.state)
  if (next.kind !== 'check' && gate) return `${gate.no} and Enter: ${gate.says}`
  return enterClear(scene).says
}

const ROUND = 4
const FIRST_CHECK = 5

/** The gates of the end are opened by a number and Enter, never by Enter alone. */
function enterClear({ session }: Scene): Choice {
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
