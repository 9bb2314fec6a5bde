import { dirname, join, resolve } from 'node:path'
import type { DoctorAsk, Errand } from '../../lines/errand.ts'
import { type Failed, failedByError, refusedWith } from '../../photos/failed.ts'
import type { ErrandOutcome } from '../../session/errands.ts'
import { type Examination, firstUnlawful, type Mending, picturesIn } from '../../session/health.ts'
import type { Session } from '../../session/session.ts'
import { type Entry, parseEntry } from '../../session/stored-entry.ts'
import { NoCopy, openCopyNamed } from '../../storage/copy-of-job.ts'
import { listJobs } from '../../storage/job-folders.ts'
import { JOURNAL_NAME } from '../../storage/journal/journal-file.ts'
import { lookAtJournal, mendJournal } from '../../storage/journal/mend-journal.ts'
import { pathNamed } from '../../storage/path-named.ts'
import { lookAround } from '../../storage/surroundings.ts'
import { say } from '../../words/cures.ts'
import {
  type Around,
  type DoctorTelling,
  emptyText,
  foundText,
  hurtText,
  mendedText,
  notMendedText,
  soundText,
} from '../../words/doctor/doctor-text.ts'
import { noCopyText } from '../../words/merging/merge-text.ts'
import { told } from '../../words/told.ts'
import { troubleOfRecord } from '../../words/trouble-of.ts'
import { whenText } from '../answers/when.ts'

/** The job that it is asked about. */
interface Patient {
  /** Its folder. */
  folder: string
  /** The folder of the jobs, where copies of it may lie. */
  home: string
  cwd: string
  /** Words of the doctor to type, in quotes, as they are typed here. */
  ask: (words: string) => string
}

/**
 * Examines the journal of a job and what lies around it, and mends it as far as that was asked for. Only what the disk or
 * the lock refuses, and what is not as it was recorded, is a failure.
 */
export async function runDoctor(asked: DoctorAsk, patient: Patient): Promise<ErrandOutcome> {
  const { folder } = patient
  const path = join(folder, JOURNAL_NAME)
  const named = asked.how === 'from' ? pathNamed(asked.path) : ''
  try {
    const others = asked.how === 'from' ? [await journalAt(named, path, patient)] : []
    const looking = { parse: parseEntry, firstUnlawful, others }
    const telling = { path, ask: patient.ask, when: whenText }
    if (asked.how === 'look') return looked(lookAtJournal(folder, looking), patient, telling)
    const mending = mendJournal(folder, { ...looking, how: asked.how === 'cut' ? 'cut' : 'mend' })
    return mended(mending, asked.how, patient, telling)
  } catch (error) {
    if (error instanceof NoCopy) return refusedWith(error.code, noCopyText(error.code, named))
    return failedByError(error, path, [])
  }
}

/** The same for the job that is open, which goes on with what was mended. */
export async function runDoctorHere(
  asked: Extract<Errand, { errand: 'doctor' }>,
  session: Session,
  { home, cwd }: { home: string; cwd: string },
): Promise<ErrandOutcome> {
  const ask = (words: string) => say(`doctor ${words}`)
  const outcome = await runDoctor(asked, { folder: dirname(session.store.path), home, cwd, ask })
  if (asked.how === 'look') return asAnswer(outcome)
  if (!outcome.ok) return outcome
  session.refresh()
  // What was cut out of what had been read already stays in sight until the job is opened anew.
  return troubleOfRecord(session) === null
    ? outcome
    : { ...outcome, text: [...outcome.text, 'close the job and open it again to go on'] }
}

/** Who asked what is wrong and was told has been answered, and needs no words to say again. */
function asAnswer(outcome: ErrandOutcome): ErrandOutcome {
  if (outcome.ok || outcome.facts === undefined) return outcome
  const { told, text = [], facts } = outcome
  const lines = [told.what, ...told.lines, told.cure, ...text]
  return { ok: true, entries: [], text: lines, answer: facts.doctor, isBadNews: true }
}

async function journalAt(named: string, own: string, patient: Patient): Promise<Buffer> {
  const copy = await openCopyNamed(named, own, patient)
  copy.close()
  return copy.journal
}

function looked(found: Examination<Entry>, patient: Patient, telling: DoctorTelling): ErrandOutcome {
  const around = aroundOf(found.entries, patient)
  const text = foundText(found, around, telling)
  const facts = factsOf(found, around)
  if (found.verdict !== 'sound') return hurt(hurtText(found, telling), text, facts)
  if (found.entries.length === 0) {
    return hurt(emptyText(telling), text, facts)
  }
  if (!around.concerns.some(({ kind }) => NOT_AS_RECORDED.has(kind)))
    return { ok: true, entries: [], text: [soundText(found), ...text], answer: facts.doctor }
  const isOnly = told(
    `${soundText(found)}; but not everything that it names is there`,
    'see above what to do',
  )
  return { ...hurt(isOnly, text, facts), exit: 'refused', code: 'not-all-there' }
}

function mended(
  mending: Mending<Entry>,
  how: 'mend' | 'cut' | 'from',
  patient: Patient,
  telling: DoctorTelling,
): ErrandOutcome {
  const { found } = mending
  if (!mending.done && mending.why === 'sound') return looked(found, patient, telling)
  const around = { concerns: [], copies: [] }
  const text = foundText(found, around, telling)
  if (!mending.done) {
    const failed = hurt(notMendedText(mending.why, how, found, telling), text, factsOf(found, around))
    return { ...failed, exit: mending.why === 'newer' ? 'not-recorded' : 'refused', code: mending.why }
  }
  const { copy, rest } = mending
  return {
    ok: true,
    entries: [],
    text: [...mendedText(mending, telling), ...text],
    answer: { ...factsOf(found, around).doctor, mended: { copy, rest } },
  }
}

/** What makes a job less than whole although its record is. */
const NOT_AS_RECORDED = new Set(['picture-missing', 'picture-changed', 'link'])

function hurt(what: Failed['told'], text: string[], facts: Failed['facts']): Failed {
  return { ok: false, exit: 'not-recorded', code: 'damaged', told: what, entries: [], text, facts }
}

function aroundOf(entries: readonly Entry[], { folder, home }: Patient): Around {
  const id = entries[0]?.id
  return {
    concerns: lookAround(folder, picturesIn(entries)),
    copies: listJobs(home, parseEntry)
      .filter(({ header, path }) => header && header.id === id && resolve(path) !== resolve(folder))
      .map((other) => other.folder),
  }
}

/** For a program: all of it, by codes. */
function factsOf({ verdict, findings, entries, behind }: Examination<Entry>, around: Around) {
  return { doctor: { verdict, entries: entries.length, findings, behind, ...around } }
}
