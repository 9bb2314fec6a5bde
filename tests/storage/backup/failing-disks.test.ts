import { mkdirSync, readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { openArchive } from '../../../src/storage/backup/read-archive.ts'
import { restoreArchive } from '../../../src/storage/backup/restore-archive.ts'
import { writeArchive } from '../../../src/storage/backup/write-archive.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { faultyArchiveFiles } from './support/faulty-archive-files.ts'
import { contents, keepJob } from './support/kept-job.ts'

const OPTIONS = { now: new Date(2030, 0, 2), program: '0.1.0' }
/** What disks say when they are full, faulty, read-only or gone. */
const ERRNOS = ['ENOSPC', 'EIO', 'EROFS', 'ENOENT']

interface Tried {
  faults: number
  failed: number
}

/** Does the work with a fault at each of its calls in turn, alone and with all after it; `look` judges what is there then. */
async function atEveryCall(
  files: ReturnType<typeof faultyArchiveFiles>,
  work: () => Promise<unknown>,
  look: (hasFailed: boolean, which: string) => unknown,
): Promise<Tried> {
  const tried = { faults: 0, failed: 0 }
  for (const onwards of [false, true]) {
    for (let at = 1; ; at += 1) {
      const errno = ERRNOS[at % ERRNOS.length] as string
      files.plant({ at, onwards, errno })
      const hasFailed = await work().then(
        () => false,
        (error) => (typeof error.code === 'string' ? true : Promise.reject(error)),
      )
      const { hit } = files
      files.mend()
      await look(hasFailed, `${errno} in call ${at}, ${hit}${onwards ? ', and in all after it' : ''}`)
      if (hit === null) break
      tried.faults += 1
      tried.failed += Number(hasFailed)
    }
  }
  return tried
}

describe('with a fault at every call of the file system in turn', () => {
  test('a back-up is made whole or not at all, and the job is as it was', async () => {
    const home = temporaryFolder()
    const job = keepJob(home)
    const before = contents(job)
    const folder = join(home, 'stick')
    mkdirSync(folder)
    const files = faultyArchiveFiles()
    const back = () => writeArchive(job, { folder }, { ...OPTIONS, fs: files })
    const tried = await atEveryCall(files, back, async (hasFailed, which) => {
      // Where not even a removal works, a lock may stay behind: it is known as one of the dead later.
      rmSync(join(job, 'journal.lock'), { force: true })
      expect(contents(job), which).toEqual(before)
      const made = readdirSync(folder)
      expectOneOrNone(made, { hasFailed, which })
      for (const name of made) {
        const archive = await openArchive(join(folder, name))
        const { files, missing } = archive.manifest
        expect(await archive.verify(), which).toMatchObject({ id: 'e1', entries: 2, hurt: null })
        expect(files.length + missing.length, which).toBe(4)
        archive.close()
        rmSync(join(folder, name))
      }
    })
    expect(tried.faults).toBeGreaterThan(100)
    expect(tried.failed).toBeGreaterThan(tried.faults / 2)
  })

  test('a job is restored whole or not at all, and the home is as it was', async () => {
    const outer = temporaryFolder()
    const job = keepJob(outer)
    const whole = contents(job)
    const { path } = await writeArchive(job, { folder: outer }, OPTIONS)
    const home = join(outer, 'home')
    mkdirSync(home)
    const files = faultyArchiveFiles()
    const restore = async () => {
      const archive = await openArchive(path, files)
      try {
        await restoreArchive(archive, home, { fs: files })
      } finally {
        archive.close()
      }
    }
    const tried = await atEveryCall(files, restore, (hasFailed, which) => {
      rmSync(join(home, '.jobs.lock'), { force: true })
      const made = readdirSync(home)
      expectOneOrNone(made, { hasFailed, which })
      for (const name of made) {
        expect(contents(join(home, name)), which).toEqual(whole)
        rmSync(join(home, name), { recursive: true })
      }
    })
    expect(tried.faults).toBeGreaterThan(100)
    expect(tried.failed).toBeGreaterThan(tried.faults / 2)
  })
})

/** One where it was done, none where it failed; but what has its name and cannot be taken back any more stays, and is whole. */
function expectOneOrNone(made: string[], { hasFailed, which }: { hasFailed: boolean; which: string }): void {
  if (hasFailed && which.endsWith('all after it')) expect(made.length, which).toBeLessThanOrEqual(1)
  else expect(made.length, which).toBe(hasFailed ? 0 : 1)
}
