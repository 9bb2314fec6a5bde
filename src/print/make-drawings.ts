import { MACHINE_NUMBER } from '../label/code.ts'
import { calibrationPage } from '../label/layout/calibration-page.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Printed } from '../lines/errand.ts'
import { standingOf } from '../session/label-facts.ts'
import { codeOf } from '../session/scan.ts'
import type { Session } from '../session/session.ts'
import { containersOfStep } from '../session/views.ts'
import { containerLabel } from '../words/label-text/container-label.ts'
import { machineTag } from '../words/label-text/machine-tag.ts'
import type { Choice } from './choose-print.ts'
import { typeface } from './fonts.ts'
import { jobPart, type Made, madeLabels, madePages, type NotMade, notMade } from './made.ts'
import { makeBlanks, makeBlanksAgain } from './make-blanks.ts'
import { makeFlags } from './make-flags.ts'
import { makePlan } from './make-plan.ts'
import { makeTemplate } from './make-template.ts'
import { refusedBy } from './send-for.ts'

/** Draws what is asked for, on the stock that was chosen. Records what has to be recorded for it. */
export function makeDrawings(session: Session, what: Printed, choice: Choice, now: Date): Made | NotMade {
  const { state } = session
  const date = dayOf(now)
  switch (what.print) {
    case 'blanks':
      return makeBlanks(session, what, choice)
    case 'blanks-again':
      return makeBlanksAgain(session, what, choice)
    case 'containers':
      return makeContainers(session, what.containers, choice, date)
    case 'all-containers':
      return makeContainers(session, inUse(session), choice, date)
    case 'containers-of-step':
      return makeContainers(session, containersOfStep(state, what.step), choice, date)
    case 'flags':
      return makeFlags(session, what.piece as PieceId, choice)
    case 'machine': {
      const tag = machineTag(state, standingOf(session), date, codeOf(state, MACHINE_NUMBER))
      return madeLabels([tag], choice, {
        title: 'tag of the machine',
        name: `${jobPart(state.job.no)}-machine`,
      })
    }
    case 'plan':
      return makePlan(session, choice, date)
    case 'template':
      return makeTemplate(session, what, choice)
    case 'calibration': {
      const page = calibrationPage(choice.stock, { typeface: typeface(), shift: choice.shift })
      return madePages([page], {
        title: `calibration page of ${choice.stock.name}`,
        name: `calibration-${choice.stock.name}`,
      })
    }
    default:
      return what satisfies never
  }
}

function makeContainers(
  { state }: Session,
  nos: readonly number[],
  choice: Choice,
  date: string,
): Made | NotMade {
  for (const no of nos) {
    const refusal = refusalOf(state, no)
    if (refusal) return refusal
  }
  if (nos.length === 0) return notMade({ code: 'nothing-to-print', what: 'container' })
  const contents = nos.map((no) => containerLabel(state, no, date, codeOf(state, no)))
  const names = contents.map(({ name }) => name)
  const [first = ''] = names
  const title = names.length === 1 ? first : `${first} to ${names.at(-1)}`
  return madeLabels(contents, choice, {
    title: `labels of ${title}`,
    name: [jobPart(state.job.no), ...new Set([nos[0], nos.at(-1)])].join('-'),
  })
}

/** A label of a container that is not there, or is void, or is still to be used, is not printed. */
function refusalOf(state: Session['state'], no: number): NotMade | null {
  const { containers, blanks } = state
  const container = containers.get(no)
  if (container?.voided) {
    const insteadOf = container.voided.insteadOf ?? null
    return refusedBy(state, { code: 'container-void', container: no, insteadOf })
  }
  if (container) return null
  if (blanks.get(no)?.voided === null) return notMade({ code: 'label-still-unused', label: no })
  return refusedBy(state, { code: 'unknown', what: 'container', id: String(no) })
}

function inUse({ state }: Session): number[] {
  const nos = [...state.containers.values()].filter(({ voided }) => voided === null).map(({ no }) => no)
  // An unused label may have been opened long after its number was dealt; on a sheet one looks by the number.
  return nos.sort((a, b) => a - b)
}

/** The day as it is written on labels, in the time of this place: `2026-11-25`. */
function dayOf(now: Date): string {
  const two = (number: number) => String(number).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
