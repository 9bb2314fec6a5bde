import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { JOURNAL_NAME } from '../../../src/storage/journal/journal-file.ts'
import { lookAtJournal, mendJournal } from '../../../src/storage/journal/mend-journal.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'
import { withLock } from '../../../src/storage/lock/lock.ts'
import { faultyFileSystem } from '../support/faulty-file-system.ts'
import { fileOf, linesOf } from '../support/journal-bytes.ts'
import { type Note, note, notes, parseNote } from '../support/notes.ts'
import { recordingFileSystem } from '../support/recording-file-system.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const WHOLE = fileOf(notes(9))
const FLIPPED = Buffer.from(WHOLE.toString().replace('5 cap', '5 bap'))
const GAP = Buffer.concat(linesOf(WHOLE).filter((_, index) => index !== 4))
const looking = { parse: parseNote, firstUnlawful: (_: readonly Note[]) => null }

describe('looking', () => {
  test('finds what is wrong, and leaves every file as it is', () => {
    const folder = folderWith(GAP)
    expect(lookAtJournal(folder, looking)).toMatchObject({ verdict: 'lossy', entries: notes(4) })
    expect(filesIn(folder)).toEqual({ [JOURNAL_NAME]: `${GAP}` })
  })

  test('waits for whoever is writing the end of the file just now', () => {
    const folder = folderWith(WHOLE.subarray(0, -20))
    const found = withLock(join(folder, 'journal.lock'), {}, () =>
      lookAtJournal(folder, looking, { lockLimit: 0 }),
    )
    expect(found.findings).toMatchObject([{ kind: 'torn' }])
    expect(filesIn(folder)).toEqual({ [JOURNAL_NAME]: `${WHOLE.subarray(0, -20)}` })
  })

  test('a journal that is not there is an error of the system', () => {
    expect(() => lookAtJournal(temporaryFolder(), looking)).toThrow(
      expect.objectContaining({ code: 'ENOENT' }),
    )
  })
})

describe('mending', () => {
  test('what is certain: the very bytes, and a copy of the file as it was', () => {
    const folder = folderWith(FLIPPED)
    const mending = mendJournal(folder, { ...looking, how: 'mend' })
    expect(mending).toMatchObject({ done: true, copy: join(folder, 'journal.before-mending-1'), rest: null })
    expect(filesIn(folder)).toEqual({
      [JOURNAL_NAME]: `${WHOLE}`,
      'journal.before-mending-1': `${FLIPPED}`,
    })
    const store = openJournal(folder, { parse: parseNote })
    expect(store.problem).toBeNull()
    expect(store.append(() => [note(10)])).toEqual([note(10)])
  })

  test('a program that has the job open goes on with the mended file', () => {
    const folder = folderWith(FLIPPED)
    const store = openJournal(folder, { parse: parseNote })
    expect(store.entries()).toEqual(notes(4))
    mendJournal(folder, { ...looking, how: 'mend' })
    expect(store.refresh()).toEqual(notes(9).slice(4))
    expect([store.problem, store.readOnly]).toEqual([null, null])
  })

  test('what is not certain is left alone, until it is to be cut', () => {
    const folder = folderWith(GAP)
    expect(mendJournal(folder, { ...looking, how: 'mend' })).toMatchObject({
      done: false,
      why: 'not-certain',
    })
    expect(filesIn(folder)).toEqual({ [JOURNAL_NAME]: `${GAP}` })
    expect(mendJournal(folder, { ...looking, how: 'cut' })).toMatchObject({
      done: true,
      rest: join(folder, 'journal.cut-1'),
    })
    expect(filesIn(folder)).toEqual({
      [JOURNAL_NAME]: `${fileOf(notes(4))}`,
      'journal.before-mending-1': `${GAP}`,
      'journal.cut-1': `${Buffer.concat(linesOf(WHOLE).slice(5))}`,
    })
    expect(mendJournal(folder, { ...looking, how: 'cut' })).toMatchObject({ done: false, why: 'sound' })
  })

  test('from another copy', () => {
    const folder = folderWith(GAP)
    expect(mendJournal(folder, { ...looking, how: 'mend', others: [fileOf(notes(6))] })).toMatchObject({
      done: true,
    })
    expect(filesIn(folder)[JOURNAL_NAME]).toBe(`${WHOLE}`)
  })

  test('nothing is cut where nothing would stand', () => {
    const bytes = Buffer.concat(linesOf(WHOLE).slice(1))
    const folder = folderWith(bytes)
    expect(mendJournal(folder, { ...looking, how: 'cut' })).toMatchObject({
      done: false,
      why: 'nothing-stands',
    })
    expect(filesIn(folder)).toEqual({ [JOURNAL_NAME]: `${bytes}` })
  })

  test('waits for the lock', () => {
    const folder = folderWith(FLIPPED)
    const lock = join(folder, 'journal.lock')
    const mend = () => mendJournal(folder, { ...looking, how: 'mend', lockLimit: 0 })
    withLock(lock, {}, () => expect(mend).toThrow(expect.objectContaining({ code: 'lock-held' })))
    expect(filesIn(folder)).toEqual({ [JOURNAL_NAME]: `${FLIPPED}` })
  })

  test('the copies are on the disk before the file is touched', () => {
    const calls: string[] = []
    mendJournal(folderWith(GAP), { ...looking, how: 'cut', fs: recordingFileSystem(calls) })
    // The lock file is written first. Then copy, what is cut off, the folder; then the draft, its name, the folder.
    const copies = ['writeSync', 'fsyncSync', 'writeSync', 'fsyncSync', 'fsyncSync']
    expect(calls).toEqual(['writeSync', ...copies, 'writeSync', 'fsyncSync', 'renameSync', 'fsyncSync'])
  })

  test.each(['mend', 'cut'] as const)(
    '%s: a failure at every call leaves the old file or the mended one, and the copy',
    (how) => {
      const [bytes, after] = how === 'mend' ? [FLIPPED, WHOLE] : [GAP, fileOf(notes(4))]
      for (let at = 1; ; at += 1) {
        const folder = folderWith(bytes)
        const fs = faultyFileSystem()
        fs.plant({ at, errno: 'EIO' })
        const isDone = succeeds(() => mendJournal(folder, { ...looking, how, fs }))
        const { [JOURNAL_NAME]: journal, 'journal.before-mending-1': copy, ...more } = filesIn(folder)
        const call = `call ${at}: ${fs.hit}`
        expect([`${bytes}`, `${after}`], call).toContain(journal)
        if (journal === `${after}`) expect(copy, call).toBe(`${bytes}`)
        if (journal === `${after}` && how === 'cut')
          expect(more['journal.cut-1'], call).toBe(`${Buffer.concat(linesOf(WHOLE).slice(5))}`)
        if (isDone) expect(journal, call).toBe(`${after}`)
        expect(
          Object.keys(more).filter((name) => name.endsWith('.tmp')),
          call,
        ).toEqual([])
        if (fs.hit === null) {
          expect([at > 20, isDone]).toEqual([true, true])
          return
        }
      }
    },
  )

  test('a disk that gives back other bytes than it took is not believed', () => {
    const folder = folderWith(FLIPPED)
    const real = recordingFileSystem([])
    let reads = 0
    const fs = {
      ...real,
      readSync: (...args: Parameters<typeof real.readSync>) => {
        const count = real.readSync(...args)
        reads += 1
        if (reads > 1 && count > 50) args[1][40] = 0x3f
        return count
      },
    }
    expect(() => mendJournal(folder, { ...looking, how: 'mend', fs })).toThrow(
      expect.objectContaining({ code: 'EIO' }),
    )
    expect(filesIn(folder)['journal.before-mending-1']).toBe(`${FLIPPED}`)
  })
})

function folderWith(bytes: Uint8Array): string {
  const folder = join(temporaryFolder(), 'job')
  mkdirSync(folder)
  writeFileSync(join(folder, JOURNAL_NAME), bytes)
  return folder
}

function filesIn(folder: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
  )
}

function succeeds(work: () => unknown): boolean {
  try {
    work()
    return true
  } catch {
    return false
  }
}
