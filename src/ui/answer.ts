import { groupedCode } from '../label/code.ts'
import type { ErrandOutcome } from '../session/errands.ts'
import { heedsAfter } from '../session/heeds.ts'
import { codeOf } from '../session/scan.ts'
import type { Outcome, Session } from '../session/session.ts'
import { containersOfStep } from '../session/views.ts'
import { entryText } from '../words/entries.ts'
import { heedText } from '../words/heeds.ts'
import { containerName } from '../words/places.ts'
import { refusalText } from '../words/refusals.ts'
import type { Told } from '../words/told.ts'
import { withWords } from './model/rows.ts'
import type { Entry, State } from './model/scene.ts'
import { errorTold, recordTold } from './model/trouble.ts'
import { chip, SIGNS, type Sign } from './signs.ts'
import { type Line, line, wrap } from './text/line.ts'

/** What the program says to the line just entered. */
export interface Answer {
  sign: Sign | null
  told: Told
  /** The entry that was made: nothing else was recorded when this was said. */
  entry?: number | undefined
}

/** An answer while others write into the job as well: `0` takes back the last entry, theirs by now. */
export function answerNow(answer: Answer | null, session: Session | null): Answer | null {
  const last = session?.entries().at(-1)?.n
  if (answer?.entry === undefined || last === undefined || last === answer.entry) return answer
  return { ...answer, told: { ...answer.told, cure: `Entry ${last} was recorded since, not here.` } }
}

/** What came of a command, in words; with the entry that `0` would take back. */
export function outcomeAnswer(session: Session, outcome: Outcome): Answer {
  const { state } = session
  switch (outcome.kind) {
    case 'recorded': {
      const { entry } = outcome
      if (entry.type === 'undone') {
        return {
          sign: SIGNS.takenBack,
          told: { what: undoneText(session, entry), lines: [], cure: '"redo" brings it back.' },
        }
      }
      return {
        sign: SIGNS.recorded,
        told: {
          what:
            entry.type === 'redone' ? `brought back: ${undoneText(session, entry)}` : entryText(state, entry),
          lines: [
            ...followUp(state, entry),
            ...heedsAfter(state, entry).map((heed) => heedText(state, heed)),
          ],
          cure: `0 takes entry ${entry.n} back.`,
        },
        entry: entry.n,
      }
    }
    case 'refused':
      return {
        sign: SIGNS.refused,
        told: refusalText(session.stateNow(), outcome.refusal, (no) => groupedCode(codeOf(state, no))),
      }
    case 'not-recorded':
      return { sign: SIGNS.notRecorded, told: notRecordedTold(session, outcome.error) }
    default:
      return outcome satisfies never
  }
}

/** What came of an errand, in words. */
export function errandAnswer(outcome: ErrandOutcome): Answer {
  if (outcome.ok) {
    const [what = '', ...lines] = outcome.text.map((text) => text.trim())
    return {
      sign: outcome.isBadNews ? SIGNS.notWhole : SIGNS.done,
      told: { what, lines, cure: lines.length > FEW ? SHOWS_ALL : '' },
    }
  }
  const { exit, told, text = [] } = outcome
  const lines = [...told.lines, ...text.map((each) => each.trim())]
  return {
    sign: exit === 'refused' ? SIGNS.refused : SIGNS.notDone,
    told: { ...told, lines, cure: lines.length > FEW ? `${told.cure} ${SHOWS_ALL}` : told.cure },
  }
}

/** So many lines are seen at a glance under the line. */
const FEW = 3

const SHOWS_ALL = '"told" shows all of it.'

/** Something went wrong in a job that nobody foresaw, or the disk would not. */
export function faultAnswer(error: unknown, { store }: Session): Answer {
  const told = errorTold(error, store.path)
  return {
    sign: SIGNS.notRecorded,
    told: told ?? {
      what: `A fault of putback's own: ${error}`,
      lines: [],
      cure: 'Everything recorded stays recorded.',
    },
  }
}

function notRecordedTold(session: Session, error: Error): Told {
  const known = errorTold(error, session.store.path) ?? recordTold(session)
  return (
    known ?? {
      what: `Not recorded: ${error.message}.`,
      lines: [],
      cure: 'Everything recorded before still stands.',
    }
  )
}

function undoneText(session: Session, { entry: n }: Extract<Entry, { type: 'undone' | 'redone' }>): string {
  const entry = session.entries().find((each) => each.n === n)
  return entry ? `entry ${n}, ${entryText(session.state, entry)}` : `entry ${n}`
}

/** What hands have to do because of an entry: a number to write on a bag, a bag to turn inside out. */
function followUp(state: State, entry: Entry): string[] {
  const label = (no: number) => `${containerName(state, no)}, label ${groupedCode(codeOf(state, no))}`
  const opened =
    entry.type === 'container-opened' ? entry.container.no : 'opened' in entry ? entry.opened?.no : undefined
  if (opened !== undefined && state.containers.get(opened)?.run !== undefined) return []
  if (opened !== undefined) return [`write it on ${label(opened)}; "labels ${opened}" prints it`]
  if (entry.type !== 'build-done') return []
  return containersOfStep(state, entry.step).map((no) => `something of it still lies in ${label(no)}`)
}

/**
 * An answer on at most `most` rows of a width. What it is and what to do always stand there; of the reasons between
 * them as many as there is room for.
 */
export function answerRows(
  { sign, told: { what, lines, cure } }: Answer,
  width: number,
  most = 1000,
): Line[] {
  const head = wrap(sign ? line(chip(sign), ' ', what) : line('   ', ...withWords(what)), width, 3)
  const foot = cure === '' ? [] : wrap(line('   ', ...withWords(cure)), width, 3)
  const room = most - head.length - foot.length
  const reasons: Line[] = []
  for (const [index, text] of lines.entries()) {
    const rows = wrap(line('   · ', ...withWords(text)), width, 5)
    const isLast = index === lines.length - 1
    if (reasons.length + rows.length > room - (isLast ? 0 : 1)) {
      reasons.push(line(`   · and ${lines.length - index} more`))
      break
    }
    reasons.push(...rows)
  }
  return [...head, ...reasons, ...foot]
}

/** Something said without a record being asked for. */
export function saying(what: string, cure = ''): Answer {
  return { sign: null, told: { what, lines: [], cure } }
}

/** What is written is not understood. */
export function notUnderstood(told: Told): Answer {
  return { sign: SIGNS.notUnderstood, told }
}
