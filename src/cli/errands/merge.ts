import { basename, dirname } from 'node:path'
import type { Errand } from '../../lines/errand.ts'
import { type Brought, bringPictures } from '../../photos/bring-pictures.ts'
import { type Failed, failedByError, failedByTrouble, refusedWith } from '../../photos/failed.ts'
import type { ErrandOutcome } from '../../session/errands.ts'
import { lawfulPart } from '../../session/health.ts'
import { isToDecide, type MergeOutcome, mergeCopy, planCopy } from '../../session/merge.ts'
import type { Session } from '../../session/session.ts'
import { type Entry, parseEntry } from '../../session/stored-entry.ts'
import { type CopyOfJob, discardKept, keepJournal, NoCopy, openCopyNamed } from '../../storage/copy-of-job.ts'
import { readLines } from '../../storage/journal/line.ts'
import { pathNamed } from '../../storage/path-named.ts'
import type { PhotoFileSystem } from '../../storage/photo-files.ts'
import { entryText } from '../../words/entries.ts'
import {
  badCopyText,
  broughtText,
  type MergeTelling,
  mergedText,
  noCopyText,
  nothingNewText,
  otherJobText,
  toDecideText,
  unlawfulText,
} from '../../words/merging/merge-text.ts'
import { troubleOfProblem, troubleOfRecord } from '../../words/trouble-of.ts'
import { label } from '../answers/labels.ts'
import { whenText } from '../answers/when.ts'

type Asked = Extract<Errand, { errand: 'merge' }>

/** Where a copy is looked for: where the program was started, then among the jobs. */
export interface MergePlaces {
  home: string
  cwd: string
}

/**
 * Brings a copy of the job together with it. What fits is recorded; where something does not, or bags get other numbers,
 * nothing is until somebody has seen it and says `take`. The copy is only read. Throws only for a fault of ours.
 */
export async function runMerge(
  asked: Asked,
  session: Session,
  places: MergePlaces,
  tell: (progress: string) => void,
  { fs }: { fs?: PhotoFileSystem | undefined } = {},
): Promise<ErrandOutcome> {
  const trouble = troubleOfRecord(session)
  if (trouble) return failedByTrouble(trouble, [])
  const path = pathNamed(asked.path)
  let copy: CopyOfJob | null = null
  try {
    tell('reading the copy')
    copy = await openCopyNamed(path, session.store.path, places)
    return await withCopy({ asked, session, copy, tell, fs })
  } catch (error) {
    if (error instanceof NoCopy) return refusedWith(error.code, noCopyText(error.code, asked.path))
    return failedByError(error, path, [])
  } finally {
    copy?.close()
  }
}

interface Merge {
  asked: Asked
  session: Session
  copy: CopyOfJob
  tell: (progress: string) => void
  /** What is written beside the journal goes through it. */
  fs: PhotoFileSystem | undefined
}

async function withCopy(merge: Merge): Promise<ErrandOutcome> {
  const { asked, session, copy } = merge
  const { entries: theirs, problem } = readLines(copy.journal, parseEntry)
  const { state: there, unlawful } = lawfulPart(theirs)
  const hurt = unlawful ? { kind: 'law' as const, entry: unlawful.n } : problem
  if (hurt) return refusedWith('copy-hurt', badCopyText(troubleOfProblem(hurt, copy.path), asked.path))
  session.refresh()
  const telling: MergeTelling = {
    here: session.state,
    there,
    path: asked.path,
    when: whenText,
    code: label(session.state),
  }
  const planned = planCopy(session.entries(), theirs)
  if (planned.kind === 'none') {
    return planned.why === 'other-job' ? notMerged(planned, telling) : nothingNew(merge, telling)
  }
  const { plan } = planned
  if (isToDecide(plan) && !asked.isTaken) return notMerged({ kind: 'to-decide', plan }, telling)
  return takeOver(merge, { theirs, fits: plan.fits, telling })
}

/** Writes what fits, its pictures first: no entry may name a file that is not on the disk. */
async function takeOver(
  { asked, session, copy, tell, fs }: Merge,
  { theirs, fits, telling }: { theirs: readonly Entry[]; fits: readonly Entry[]; telling: MergeTelling },
): Promise<ErrandOutcome> {
  const brought = await bringPictures(session, copy, fits, { tell, fs })
  tell('')
  const kept = asked.isTaken ? keepJournal(dirname(session.store.path), copy.journal, fs) : undefined
  const outcome = mergeCopy(session, {
    theirs,
    copy: copy.path,
    kept: kept && basename(kept),
    isTaken: asked.isTaken,
    pictures: brought.names,
    tell: (entry) => entryText(telling.there, entry),
  })
  if (outcome.kind === 'merged') return merged(outcome, { ...telling, here: session.state }, brought)
  if (kept !== undefined) discardKept(kept, fs)
  if (outcome.kind === 'not-recorded') return failedByError(outcome.error, session.store.path, [])
  // Another program took it over in the meantime.
  if (outcome.kind === 'none' && outcome.why === 'nothing-new')
    return nothingNew({ asked, session, copy, tell, fs }, telling)
  return notMerged(outcome, telling)
}

/**
 * Pictures may still have been missing here, and a merge that was killed may have written what is here without seeing it
 * onto the disk.
 */
async function nothingNew({ session, copy, tell, fs }: Merge, telling: MergeTelling): Promise<ErrandOutcome> {
  const flushed = session.writeTogether(() => [])
  if (flushed.kind === 'not-recorded') return failedByError(flushed.error, session.store.path, [])
  const { restored } = await bringPictures(session, copy, [], { tell, fs })
  const pictures = { copied: 0, restored: restored.length, missing: [] }
  return {
    ok: true,
    entries: [],
    text: [nothingNewText(telling.path), ...broughtText(pictures)],
    answer: { renumbered: [], leftOut: [], pictures },
  }
}

function merged(
  { entries, plan }: Extract<MergeOutcome, { kind: 'merged' }>,
  telling: MergeTelling,
  { names, restored, missing }: Brought,
): ErrandOutcome {
  const pictures = { copied: names.size, restored: restored.length, missing }
  const { renumbered, conflicts } = plan
  return {
    ok: true,
    entries,
    text: [...mergedText(telling, entries, plan), ...broughtText(pictures)],
    answer: { renumbered, leftOut: conflicts.map(({ entry, why }) => ({ entry: entry.id, why })), pictures },
  }
}

function notMerged(
  outcome: Exclude<MergeOutcome, { kind: 'merged' | 'not-recorded' }>,
  telling: MergeTelling,
): Failed {
  switch (outcome.kind) {
    case 'to-decide':
      return refusedWith('merge-to-decide', toDecideText(telling, outcome.plan))
    case 'none':
      return refusedWith('other-job', otherJobText(telling))
    case 'unlawful':
      return refusedWith('merge-unlawful', unlawfulText(telling.path, outcome.n))
    default:
      return outcome satisfies never
  }
}
