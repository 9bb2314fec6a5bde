import { groupedCode } from '../../label/code.ts'
import { knownSpares } from '../../session/known-spares.ts'
import { codeOf } from '../../session/scan.ts'
import type { trialBalance } from '../../session/views.ts'
import { stepName } from '../../words/names.ts'
import { containerName, containerPlace } from '../../words/places.ts'
import { sparesText } from '../../words/spares-text.ts'
import { type ToldLeftover, toldLeftovers } from '../../words/told-leftovers.ts'
import { type Choice, goTo, type Page, type Rows, rowsOf } from '../page.ts'
import { cut, type Line, line, plain, strong } from '../text/line.ts'
import { screenOfReason } from './due/screen-of-reason.ts'
import { groups, headed, indented, numbered, numberedRow, withWords } from './rows.ts'
import type { Scene, State } from './scene.ts'

export type Leftover = ReturnType<typeof trialBalance>[number]

/** Each thing that stands before the first start, with what to do about it, and where its number leads. */
export function leftRows(
  { session, width }: Scene,
  open: readonly Leftover[],
): Pick<Page, 'rows' | 'choice'> {
  const state = session.stateNow()
  const told = toldLeftovers(state, open, (no) => groupedCode(codeOf(state, no)))
  const choice = (no: number) => choiceOf(state, told[no - 1])
  const spare = spareRows({ session, width })
  if (told.length > MANY) return { rows: longRows({ told, choice, spare, width }), choice }
  const rows = told.map((each, index) => [
    ...(choice(index + 1) ? numbered(index + 1, headOf(each), width) : indented(headOf(each), width)),
    ...indented(cureOf(each), width),
  ])
  // A long list is read at a glance, a short one with care.
  return { rows: rowsOf(groups(rows.length > FEW ? rows.flat() : groups(...rows), spare)), choice }
}

const FEW = 8

/** So many nobody reads word for word: each has two rows, which are made when they are shown. */
const MANY = 200

interface Long {
  told: readonly ToldLeftover[]
  choice(no: number): Choice | undefined
  spare: readonly Line[]
  width: number
}

function longRows({ told, choice, spare, width }: Long): Rows {
  const length = told.length * 2
  return {
    length: length + spare.length,
    at(index) {
      const each = told[index >> 1]
      if (!each) return spare[index - length] ?? []
      if (index % 2 === 1) return cut(line(INDENT, cureOf(each)), width)
      const no = (index >> 1) + 1
      return cut(choice(no) ? numberedRow(no, headOf(each)) : line(INDENT, headOf(each)), width)
    },
  }
}

const INDENT = ' '.repeat(5)

function headOf({ what, where }: ToldLeftover): Line {
  // "... is still in the machine" is one phrase.
  const join = /\b(?:is|are)$/.test(what) ? ' ' : ', '
  return line(strong(what), where === '' ? '' : `${join}${where}`)
}

function cureOf({ undo, cure }: ToldLeftover): Line {
  const first = undo === '' ? [] : [strong('First undo: '), plain(`${undo}. `)]
  return line(...first, ...withWords(cure))
}

function choiceOf(state: State, told: ToldLeftover | undefined): Choice | undefined {
  if (!told) return undefined
  return writesCure(told) ?? placeOfLeftover(state, told.leftover) ?? undefined
}

/** What is done with is put away by its cure, not by looking at it again; it stands in the line first. */
function writesCure({ leftover: { code }, cure }: ToldLeftover): Choice | null {
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
  if (leftover.code === 'left-out-open')
    return { says: 'say how it is settled', act: { do: 'write', before: `settle ${leftover.leftOut}: ` } }
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

/** What lies there at the end and may, so that it is known for what it is. */
export function spareRows({ session, width }: Pick<Scene, 'session' | 'width'>): Line[] {
  const told = sparesText(session.state, knownSpares(session.state))
  return headed(
    'SPARE',
    told.flatMap((text) => indented(line(...withWords(text)), width)),
  )
}
