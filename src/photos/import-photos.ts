import { realpathSync, statSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { State } from '../journal/state.ts'
import { plainText } from '../label/plain-text.ts'
import type { ErrandOutcome } from '../session/errands.ts'
import type { Session } from '../session/session.ts'
import { pathNamed } from '../storage/path-named.ts'
import { PHOTOS_NAME, type PhotoFileSystem, PhotoFiles } from '../storage/photo-files.ts'
import { told } from '../words/told.ts'
import { troubleOfRecord } from '../words/trouble-of.ts'
import { type Failed, failedByError, failedByTrouble, refusedWith } from './failed.ts'
import { importText, shownName } from './import-text.ts'
import { jobFolderOf } from './job-folder.ts'
import { listFolder } from './list-folder.ts'
import type { Look } from './look-at-file.ts'
import { type Lookers, openLookers } from './lookers.ts'
import { apart, PictureRecorder } from './record-pictures.ts'
import { type KnownLabels, sortPictures } from './sort-pictures.ts'

export interface ImportOptions {
  lookers?: Lookers | undefined
  fs?: PhotoFileSystem | undefined
  cwd?: string | undefined
  /** How many pictures one entry records. */
  batch?: number | undefined
}

/**
 * Copies the pictures of a folder into the job and records what they belong to, by the labels among them. What is not
 * certain is recorded as not sorted, and told with its reason. Nothing in the folder is changed. Broken off, it can be
 * run again: what is in the record already is left out. `tell` hears of each picture. Throws only for a fault of ours.
 */
export async function importPhotos(
  session: Session,
  folder: string,
  tell: (progress: string) => void,
  { lookers, fs, cwd = process.cwd(), batch = 50 }: ImportOptions = {},
): Promise<ErrandOutcome> {
  const trouble = troubleOfRecord(session)
  if (trouble) return failedByTrouble(trouble, [])
  const source = resolve(cwd, pathNamed(folder))
  const wrong = wrongFolder(source, join(jobFolderOf(session), PHOTOS_NAME))
  if (wrong) return wrong
  try {
    const listed = await listFolder(source)
    const looks = await lookAtAll(source, listed.files, tell, lookers ?? openLookers())
    session.refresh()
    const { state } = session
    const { seen, twice, leftOut } = apart(source, looks)
    const recorded = [...state.pictures.values()].map(({ file }) => file)
    const files = new PhotoFiles(jobFolderOf(session), recorded, fs)
    const recorder = new PictureRecorder(session, files, tell, batch)
    const failed = await recorder.record(sortPictures(seen, knownLabels(state)))
    if (failed) return failed
    const facts = {
      folder: source,
      copies: files.path,
      listed,
      heif: looks.filter(({ look }) => look.kind === 'heif').length,
      others: looks.filter(({ look }) => look.kind === 'other').length + listed.others,
      twice,
      leftOut: [...leftOut, ...recorder.leftOut],
      pictures: recorder.pictures(),
      restored: recorder.restored,
    }
    return { ok: true, text: importText(session.state, facts), entries: recorder.entries, answer: facts }
  } catch (error) {
    return failedByError(error, source, [])
  }
}

/** The labels that a picture may show, as the record knows them now: unused ones too. */
function knownLabels({ job, blanks, containers, steps }: State): KnownLabels {
  return {
    job: job.no,
    containers: new Map(
      [...blanks, ...containers].map(([no, { voided }]) => [
        no,
        voided ? { voidFor: voided.insteadOf ?? null } : 'valid',
      ]),
    ),
    steps: new Set(steps.keys()),
  }
}

function wrongFolder(source: string, copies: string): Failed | null {
  const shown = plainText(source)
  if (!isFolder(source)) {
    return refusedWith(
      'no-such-folder',
      told(
        `there is no folder ${shown}`,
        'plug the phone or its card in, or copy the pictures to a folder, and name that',
      ),
    )
  }
  if (!isFolder(copies) || realpathSync(source) !== realpathSync(copies)) return null
  return refusedWith(
    'own-photos',
    told(
      `${shown} is the folder that the copies of this job lie in`,
      'name the folder that the phone filled',
    ),
  )
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory()
  } catch {
    return false
  }
}

/** Looks at all files, as many at once as there are lookers; the answers stand in the order of the files. */
async function lookAtAll(
  folder: string,
  names: readonly string[],
  tell: (progress: string) => void,
  lookers: Lookers,
): Promise<{ name: string; look: Look }[]> {
  const looks: { name: string; look: Look }[] = []
  let next = 0
  let done = 0
  const work = async () => {
    while (next < names.length) {
      const index = next
      next += 1
      const name = names[index] as string
      looks[index] = { name, look: await lookers.look(join(folder, name)) }
      done += 1
      tell(`${done} of ${names.length}: ${shownName(name)}`)
    }
  }
  try {
    await Promise.all(Array.from({ length: lookers.count }, work))
  } finally {
    await lookers.close()
  }
  return looks
}
