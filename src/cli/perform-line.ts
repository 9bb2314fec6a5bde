import { readCode, stepOf } from '../label/code.ts'
import { readLine } from '../lines/read-line.ts'
import type { Ask, PicturesAbout, Reading } from '../lines/reading.ts'
import { type Heed, heedsAfter } from '../session/heeds.ts'
import { type JobNumber, scan } from '../session/scan.ts'
import type { Session } from '../session/session.ts'
import type { Entry } from '../session/stored-entry.ts'
import { cardOf, planRows } from '../session/views.ts'
import { workOut } from '../session/work-out.ts'
import { entryText } from '../words/entries.ts'
import { misreadingText, whichPieceText } from '../words/misreadings.ts'
import { refusalText } from '../words/refusals.ts'
import { sumText } from '../words/sum-text.ts'
import { backText } from './answers/back-text.ts'
import { cardText } from './answers/card-text.ts'
import { checksAnswer } from './answers/checks-text.ts'
import { compareAnswer } from './answers/compare-text.ts'
import { dueAnswer } from './answers/due-text.ts'
import { finishAnswer } from './answers/finish-text.ts'
import { foundAnswer } from './answers/found-text.ts'
import { label } from './answers/labels.ts'
import { layoutAnswer } from './answers/layout-text.ts'
import { leftAnswer } from './answers/left-text.ts'
import { logAnswer } from './answers/log-text.ts'
import { markerAnswer } from './answers/marker-text.ts'
import { photosAnswer } from './answers/photos-text.ts'
import { proposalsAnswer } from './answers/proposals-text.ts'
import { type Drawing, qrAnswer } from './answers/qr-text.ts'
import { scanText } from './answers/scan-answer.ts'
import { shoppingAnswer } from './answers/shopping-text.ts'
import { stepAnswer } from './answers/step-text.ts'
import { whereAnswer } from './answers/where-text.ts'
import { help } from './commands/help.ts'
import { EXIT } from './exit-codes.ts'
import { followUp, questionsOf } from './follow-up.ts'
import type { Pending } from './pending.ts'
import type { Failure, Result, Success } from './result.ts'
import { troubleOf } from './trouble.ts'

/** What a line may need to know beyond its job. */
export interface Around {
  drawing: Drawing
  /** The other job of that number, for a label that is not of this one. */
  otherJob(no: number): JobNumber | null
}

type Commands = Extract<Reading, { kind: 'commands' }>

/** Reads a line and does what it says in an open job: records it, or answers it. An errand is handed back, to be run. */
export function performLine(session: Session, line: string, around: Around): Result | Pending {
  const state = session.stateNow()
  const reading = readLine(line, state)
  switch (reading.kind) {
    case 'commands':
      return record(session, reading)
    case 'errand':
      return { errand: reading.errand, session }
    case 'ask':
      return answer(session, reading.ask, around)
    case 'which-piece': {
      const { words, pieces } = reading
      return {
        ok: false,
        exit: EXIT.notUnderstood,
        code: 'which-piece',
        told: whichPieceText(state, words, pieces),
        facts: { which: { words, pieces } },
      }
    }
    case 'misread': {
      const { misreading } = reading
      return {
        ok: false,
        exit: EXIT.notUnderstood,
        code: misreading.code,
        told: misreadingText(state, misreading),
        facts: { misreading },
      }
    }
    default:
      return reading satisfies never
  }
}

/** Sends commands one after the other, until one is refused. What was recorded before that stands, and is told. */
function record(session: Session, { commands, bag }: Commands): Result {
  const entries: Entry[] = []
  const heeds: Heed[] = []
  const text: string[] = []
  const failed = (failure: Failure): Failure =>
    entries.length === 0 ? failure : { ...failure, entries, text }
  for (const command of commands) {
    const outcome = session.send(command)
    if (outcome.kind === 'not-recorded') return failed(troubleOf(outcome.error, session.store.path))
    if (outcome.kind === 'refused') {
      const { refusal } = outcome
      return failed({
        ok: false,
        exit: EXIT.refused,
        code: refusal.code === 'law' ? refusal.violation.law : refusal.code,
        told: refusalText(session.stateNow(), refusal, label(session.state)),
        facts: { refusal },
      })
    }
    const { entry } = outcome
    entries.push(entry)
    heeds.push(...heedsAfter(session.state, entry))
    text.push(
      `${entry.n}  ${entryText(session.state, entry)}`,
      ...followUp(session, entry).map((line) => `    ${line}`),
    )
  }
  const questions = bag === null ? [] : questionsOf(bag)
  return { ok: true, entries, heeds, text: [...text, ...questions.map((line) => `    ${line}`)] }
}

function answer(session: Session, ask: Ask, around: Around): Result {
  switch (ask.ask) {
    case 'card': {
      const card = cardOf(session)
      return answered(cardText(session, card), card)
    }
    case 'scan': {
      const scanned = scan(session, ask.text, otherJobs(session, ask.text, around))
      return answered(scanText(session, scanned), scanned)
    }
    case 'back': {
      const rows = planRows(session)
      return answered(backText(session, rows), rows)
    }
    case 'step':
      return found(stepAnswer(session, ask.step)) ?? unknown(session, 'step', ask.step)
    case 'where':
      return found(whereAnswer(session, ask.words))
    case 'left':
      return found(leftAnswer(session))
    case 'found':
      return found(foundAnswer(session, ask.found))
    case 'log':
      return found(logAnswer(session, ask.last))
    case 'label':
      return found(markerAnswer(session, ask.container)) ?? unknown(session, 'container', ask.container)
    case 'qr':
      return found(qrAnswer(session, ask.container, around.drawing)) ?? unknownNumber(session, ask.container)
    case 'photos':
      return found(photosAnswer(session, ask.of)) ?? unknownOwner(session, ask.of)
    case 'finish':
      return found(finishAnswer(session))
    case 'shopping':
      return found(shoppingAnswer(session))
    case 'proposals':
      return found(proposalsAnswer(session))
    case 'checks':
      return found(checksAnswer(session))
    case 'due':
      return found(dueAnswer(session))
    case 'compare':
      return found(compareAnswer(session, ask.piece))
    case 'layout':
      return found(layoutAnswer(session, ask.piece))
    case 'sum': {
      const worked = workOut(session.state, ask.sum)
      return answered(sumText(session.state, worked), worked)
    }
    case 'help':
      return help(ask.about)
    default:
      return ask satisfies never
  }
}

function answered(text: string[], answer: unknown): Success {
  return { ok: true, text, answer }
}

type Found = Omit<Success, 'ok' | 'entries'>

function found(answer: Found): Success
function found(answer: Found | null): Success | null
function found(answer: Found | null): Success | null {
  return answer && { ok: true, ...answer }
}

function unknown({ state }: Session, what: 'step' | 'container', id: number): Failure {
  const refusal = { code: 'unknown', what, id: String(id) } as const
  return {
    ok: false,
    exit: EXIT.refused,
    code: refusal.code,
    told: refusalText(state, refusal, label(state)),
    facts: { refusal },
  }
}

function unknownNumber(session: Session, number: number): Failure {
  const step = stepOf(number)
  return step === null ? unknown(session, 'container', number) : unknown(session, 'step', step)
}

/** A piece is known by the reading of the line. */
function unknownOwner(session: Session, about: PicturesAbout | null): Failure {
  if (about !== null && 'step' in about) return unknown(session, 'step', about.step)
  return unknown(session, 'container', about !== null && 'container' in about ? about.container : 0)
}

/** The other jobs are looked through only for a label that is not of this one. */
function otherJobs({ state }: Session, text: string, around: Around): JobNumber[] {
  const reading = readCode(text)
  if (reading.kind !== 'code' || reading.job === state.job.no) return []
  const other = around.otherJob(reading.job)
  return other === null ? [] : [other]
}
