import { groupedCode } from '../label/code.ts'
import { codeOf } from '../session/scan.ts'
import type { Outcome, Session } from '../session/session.ts'
import { entryText } from '../words/entries.ts'
import { refusalText } from '../words/refusals.ts'
import type { Told } from '../words/told.ts'
import { withWords } from './model/rows.ts'
import type { Entry } from './model/scene.ts'
import { errorTold, recordTold } from './model/trouble.ts'
import { chip, SIGNS, type Sign } from './signs.ts'
import { type Line, line, wrap } from './text/line.ts'

/** What the program says to the line just entered. */
export interface Answer {
  sign: Sign | null
  told: Told
}

/** What came of a command, in words; with the entry that `0` would take back. */
export function outcomeAnswer(session: Session, outcome: Outcome): Answer {
  const { state } = session
  switch (outcome.kind) {
    case 'recorded': {
      const { entry } = outcome
      const isUndo = entry.type === 'undone'
      return {
        sign: isUndo ? SIGNS.takenBack : SIGNS.recorded,
        told: {
          what: entryText(state, entry),
          lines: [],
          cure: isUndo ? '"redo" brings it back.' : backWords(entry),
        },
      }
    }
    case 'refused':
      return {
        sign: SIGNS.refused,
        told: refusalText(state, outcome.refusal, (no) => groupedCode(codeOf(state, no))),
      }
    case 'not-recorded':
      return { sign: SIGNS.notRecorded, told: notRecordedTold(session, outcome.error) }
    default:
      return outcome satisfies never
  }
}

function notRecordedTold(session: Session, error: Error): Told {
  const known = errorTold(error) ?? recordTold(session)
  return (
    known ?? {
      what: `Not recorded: ${error.message}.`,
      lines: [],
      cure: 'Everything recorded before still stands.',
    }
  )
}

function backWords({ n }: Entry): string {
  return `0 takes entry ${n} back.`
}

/** An answer on rows of a width: sign and what, more where there is more, and what to do. */
export function answerRows({ sign, told: { what, lines, cure } }: Answer, width: number): Line[] {
  const head = sign ? line(chip(sign), ' ', what) : line(what)
  return [
    ...wrap(head, width, sign ? 3 : 0),
    ...lines.flatMap((text) => wrap(line('   · ', ...withWords(text)), width, 5)),
    ...(cure === '' ? [] : wrap(line('   ', ...withWords(cure)), width, 3)),
  ]
}

/** Something said without a record being asked for. */
export function saying(what: string, cure = ''): Answer {
  return { sign: null, told: { what, lines: [], cure } }
}

/** What is written is not understood. */
export function notUnderstood(told: Told): Answer {
  return { sign: SIGNS.notUnderstood, told }
}
