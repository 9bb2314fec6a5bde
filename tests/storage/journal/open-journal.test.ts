import {
  appendFileSync,
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test, vi } from 'vitest'
import { NotRecorded } from '../../../src/storage/journal/not-recorded.ts'
import { type JournalStore, openJournal } from '../../../src/storage/journal/open-journal.ts'
import { LockHeld } from '../../../src/storage/lock/lock.ts'
import { faultyFileSystem } from '../support/faulty-file-system.ts'
import { type Note, note, notes, parseFirstNote, parseNote } from '../support/notes.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

describe('two that have the same job open', () => {
  test('see each other’s entries, each once', () => {
    const folder = temporaryFolder()
    const [left, right] = [open(folder), open(folder)]
    expect(add(left, 'bag 1')).toEqual([note(1, 'bag 1')])
    expect(right.refresh()).toEqual([note(1, 'bag 1')])
    expect(right.refresh()).toEqual([])
    add(right, 'bag 2')
    add(right, 'bag 3')
    const seen: Note[][] = []
    left.append((fresh) => {
      seen.push([...fresh])
      return [note(left.entries().length + 1, 'bag 4')]
    })
    expect(seen).toEqual([[note(2, 'bag 2'), note(3, 'bag 3')]])
    expect(left.refresh()).toEqual([])
    expect(right.refresh()).toEqual([note(4, 'bag 4')])
    expect(left.entries()).toEqual(right.entries())
  })

  test('what was there at opening is not fresh', () => {
    const folder = jobWith(notes(3))
    const store = open(folder)
    expect(store.entries()).toEqual(notes(3))
    expect(store.refresh()).toEqual([])
    store.append((fresh) => {
      expect(fresh).toEqual([])
      return null
    })
  })

  test('a decision on what the other wrote can be to write nothing', () => {
    const folder = temporaryFolder()
    const [left, right] = [open(folder), open(folder)]
    add(right, 'the only bag')
    const before = statSync(left.path)
    expect(left.append((fresh) => (fresh.length > 0 ? null : [note(1)]))).toEqual([])
    expect(statSync(left.path).mtimeMs).toBe(before.mtimeMs)
    expect(left.entries()).toEqual([note(1, 'the only bag')])
  })

  test('no entry at all puts what the other wrote on the disk, and changes nothing', () => {
    const folder = temporaryFolder()
    const fs = faultyFileSystem()
    const [left, right] = [openJournal(folder, { parse: parseNote, fs }), open(folder)]
    add(right, 'the only bag')
    const before = readFileSync(left.path)
    fs.plantIn('fsyncSync', 'EIO')
    expect(() => left.append(() => [])).toThrow(expect.objectContaining({ code: 'EIO' }))
    expect(left.append(() => [])).toEqual([])
    expect(readFileSync(left.path)).toEqual(before)
    expect(left.entries()).toEqual([note(1, 'the only bag')])
  })

  test('the lock is given back, whatever the decision does', () => {
    const folder = jobWith(notes(1))
    const store = open(folder)
    const blunder = new Error('a blunder')
    expect(() =>
      store.append(() => {
        throw blunder
      }),
    ).toThrow(blunder)
    expect(readdirSync(folder)).toEqual(['journal.log'])
    add(store, 'and on')
    expect(readdirSync(folder)).toEqual(['journal.log'])
  })

  test('a decision cannot append on its own', () => {
    const store = open(temporaryFolder())
    expect(() => store.append(() => store.append(() => [note(1)]))).toThrow('from within append')
    expect(store.entries()).toEqual([])
    expect(add(store, 'bag 1')).toHaveLength(1)
  })

  test('another process has the lock', () => {
    const folder = jobWith(notes(1))
    const holder = { pid: 4, host: 'bench-2', since: '2026-11-25T07:30:00.000Z', thread: 0, token: 't' }
    writeFileSync(join(folder, 'journal.lock'), JSON.stringify(holder))
    const store = openJournal(folder, { parse: parseNote, lockLimit: 30 })
    expect(store.entries()).toEqual(notes(1))
    expect(() => add(store, 'bag 2')).toThrow(LockHeld)
    expect(() => add(store, 'bag 2')).toThrow(expect.objectContaining({ host: 'bench-2', pid: 4 }))
    rmSync(join(folder, 'journal.lock'))
    expect(add(store, 'bag 2')).toHaveLength(1)
  })
})

describe('trouble', () => {
  test('any call of an append may fail, once or from then on: never half an entry, never an old one lost', () => {
    const outcomes = new Set<string>()
    for (const onwards of [false, true]) {
      for (let at = 1; ; at += 1) {
        const folder = jobWith(notes(3))
        const fs = faultyFileSystem()
        const store = openJournal(folder, { parse: parseNote, fs, lockLimit: 50 })
        fs.plant({ at, errno: 'EIO', onwards })
        const error = errorOf(() => add(store, 'bag 4'))
        const { hit } = fs
        fs.mend()
        const where = `${hit} at call ${at}, onwards: ${onwards}`
        if (hit === null) {
          expect(at).toBeGreaterThan(15)
          break
        }

        const stored = open(folder).entries()
        const four = [...notes(3), note(4, 'bag 4')]
        expect(stored.slice(0, 3), where).toEqual(notes(3))
        if (error === null) {
          expect(stored, where).toEqual(four)
          expect(store.entries(), where).toEqual(four)
        } else {
          expect(error, where).toBeInstanceOf(NotRecorded)
          expect(error, where).toMatchObject({ code: 'EIO' })
          expect(store.entries(), where).toEqual(notes(3))
          if ((error as NotRecorded).takenBack) expect(stored, where).toEqual(notes(3))
          else expect(stored, where).toEqual(four.slice(0, stored.length))
        }
        outcomes.add(
          error === null
            ? `recorded in spite of ${hit}`
            : `${hit}, taken back: ${(error as NotRecorded).takenBack}`,
        )

        // A lock that could neither be named nor removed counts as abandoned after 10 s.
        if (existsSync(join(folder, 'journal.lock'))) utimesSync(join(folder, 'journal.lock'), 1, 1)
        add(store, 'and on')
        expect(open(folder).entries(), where).toEqual([...stored, note(stored.length + 1, 'and on')])
      }
    }
    // The sweep reached what it is about.
    expect([...outcomes]).toEqual(
      expect.arrayContaining([
        'openSync, taken back: true',
        'writeSync, taken back: true',
        'writeSync, taken back: false',
        'fdatasyncSync, taken back: true',
        'fdatasyncSync, taken back: false',
        'recorded in spite of closeSync',
        'recorded in spite of unlinkSync',
      ]),
    )
  })

  test('a full disk, then room again', () => {
    const folder = jobWith(notes(1))
    const fs = faultyFileSystem()
    const store = openJournal(folder, { parse: parseNote, fs })
    fs.plantIn('writeSync', 'ENOSPC')
    expect(() => add(store, 'bag 2')).toThrow(expect.objectContaining({ code: 'ENOSPC', takenBack: true }))
    expect(add(store, 'bag 2')).toEqual([note(2, 'bag 2')])
  })

  test('a folder that is gone, or was never there', () => {
    const folder = join(temporaryFolder(), 'gone')
    const store = open(folder)
    expect(store.entries()).toEqual([])
    expect(() => add(store, 'bag 1')).toThrow(
      expect.objectContaining({ name: 'NotRecorded', code: 'ENOENT' }),
    )
  })

  test.skipIf(process.getuid?.() === 0 || process.platform === 'win32')(
    'a folder that may not be written',
    () => {
      const folder = jobWith(notes(2))
      chmodSync(folder, 0o500)
      const store = open(folder)
      expect(store.entries()).toEqual(notes(2))
      expect(() => add(store, 'bag 3')).toThrow(expect.objectContaining({ code: 'EACCES' }))
      chmodSync(folder, 0o700)
    },
  )

  test('a damaged line: named, the good ones shown, nothing changed, until it is mended', () => {
    const folder = jobWith(notes(5))
    const path = join(folder, 'journal.log')
    const right = readFileSync(path, 'utf8')
    const spoiled = right.replace('tray slot 4', 'tray slot 9')
    writeFileSync(path, spoiled)
    const store = open(folder)
    expect(store.entries()).toEqual(notes(3))
    expect(store.problem).toMatchObject({ kind: 'damaged', line: 4, why: 'checksum' })
    expect(store.readOnly).toBe(store.problem)
    expect(() => add(store, 'more')).toThrow(expect.objectContaining({ code: 'damaged' }))
    expect(readFileSync(path, 'utf8')).toBe(spoiled)
    expect(readdirSync(folder)).toEqual(['journal.log'])

    writeFileSync(path, right)
    expect(store.refresh()).toEqual([note(4), note(5)])
    expect([store.problem, store.readOnly]).toEqual([null, null])
    expect(add(store, 'more')).toHaveLength(1)
  })

  test('a last line that is damaged but has its end is not torn', () => {
    const folder = jobWith(notes(3))
    const path = join(folder, 'journal.log')
    writeFileSync(path, readFileSync(path, 'utf8').replace('tray slot 3', 'tray slot 9'))
    const store = open(folder)
    expect(store.problem).toMatchObject({ kind: 'damaged', line: 3 })
    expect(store.setAside).toEqual([])
  })

  test('a newer program goes on with it while it is open: read up to there, nothing written behind it', () => {
    const folder = temporaryFolder()
    const store = openJournal(folder, { parse: parseFirstNote })
    store.append(() => notes(2))
    openJournal(folder, { parse: parseNote }).append(() => [{ ...note(3), v: 3 }])
    const before = readFileSync(store.path)
    const decide = vi.fn(() => [note(3)])
    expect(() => store.append(decide)).toThrow(
      expect.objectContaining({ name: 'NotRecorded', code: 'newer' }),
    )
    expect(decide).not.toHaveBeenCalled()
    expect(store.refresh()).toEqual([])
    expect(store.problem).toMatchObject({ kind: 'newer', line: 3, version: 3 })
    expect(store.readOnly).toEqual(store.problem)
    expect(store.entries()).toEqual(notes(2))
    expect(readFileSync(store.path)).toEqual(before)
  })

  test('replaced while it is open', () => {
    const folder = jobWith(notes(3))
    const store = open(folder)
    const other = readFileSync(join(jobWith(notes(4, 'b')), 'journal.log'))
    writeFileSync(store.path, other)
    expect(() => add(store, 'more')).toThrow(expect.objectContaining({ code: 'replaced' }))
    expect(store.refresh()).toEqual([])
    expect(store.readOnly).toEqual({ kind: 'replaced' })
    expect(store.entries()).toEqual(notes(3))
    expect(readFileSync(store.path)).toEqual(other)
  })

  test('a writer was cut off while this one has the job open', () => {
    const folder = jobWith(notes(2))
    const store = open(folder)
    appendFileSync(store.path, 'deadbeef {"v":1')
    expect(store.refresh()).toEqual([])
    expect(store.problem).toBeNull()
    expect(add(store, 'bag 3')).toHaveLength(1)
    expect(store.setAside).toEqual([{ path: join(folder, 'journal.torn-1'), bytes: 15 }])
    expect(open(folder).entries()).toHaveLength(3)
  })

  test('a torn end that cannot be set aside is shown, and waits for the next append', () => {
    const folder = jobWith(notes(2))
    appendFileSync(join(folder, 'journal.log'), 'deadbeef {"v":1')
    const fs = faultyFileSystem()
    fs.plantIn('ftruncateSync', 'EROFS')
    const store = openJournal(folder, { parse: parseNote, fs })
    expect(store.entries()).toEqual(notes(2))
    expect(store.problem).toMatchObject({ kind: 'torn', line: 3, bytes: 15 })
    expect(add(store, 'bag 3')).toHaveLength(1)
    expect([store.problem, store.setAside.length]).toEqual([null, 1])
  })
})

describe('only to look', () => {
  test('changes nothing, not even a torn end', () => {
    const folder = jobWith(notes(2))
    const path = join(folder, 'journal.log')
    appendFileSync(path, 'deadbeef {"v":1')
    const before = readFileSync(path)
    const store = openJournal(folder, { parse: parseNote, readOnly: true })
    expect(store.entries()).toEqual(notes(2))
    expect(store.problem).toMatchObject({ kind: 'torn', line: 3 })
    expect(store.readOnly).toEqual({ kind: 'asked' })
    expect(() => add(store, 'more')).toThrow(expect.objectContaining({ code: 'read-only' }))
    expect(readFileSync(path)).toEqual(before)
    expect(readdirSync(folder)).toEqual(['journal.log'])
    add(open(folder), 'bag 3')
    expect(store.refresh()).toHaveLength(1)
    expect(store.problem).toBeNull()
  })

  test('a missing journal stays missing', () => {
    const folder = temporaryFolder()
    expect(openJournal(folder, { parse: parseNote, readOnly: true }).entries()).toEqual([])
    expect(existsSync(join(folder, 'journal.log'))).toBe(false)
  })
})

describe('watching', () => {
  test('tells of others’ entries once, not of its own, and stops', () => {
    vi.useFakeTimers()
    try {
      const folder = jobWith(notes(1))
      const [mine, theirs] = [open(folder), open(folder)]
      const told: number[] = []
      const stop = mine.watch(() => told.push(mine.refresh().length))
      const wait = () => vi.advanceTimersByTime(600)
      wait()
      add(mine, 'mine')
      wait()
      expect(told).toEqual([])
      add(theirs, 'theirs')
      add(theirs, 'theirs too')
      wait()
      expect(told).toEqual([2])
      rmSync(mine.path)
      wait()
      expect(told).toEqual([2, 0])
      expect(mine.problem).toEqual({ kind: 'replaced' })
      stop()
      mkdirSync(mine.path)
      wait()
      expect(told).toEqual([2, 0])
    } finally {
      vi.useRealTimers()
    }
  })
})

function open(folder: string): JournalStore<Note> {
  return openJournal(folder, { parse: parseNote })
}

function add(store: JournalStore<Note>, text: string): readonly Note[] {
  return store.append(() => [note(store.entries().length + 1, text)])
}

function jobWith(entries: Note[]): string {
  const folder = temporaryFolder()
  open(folder).append(() => entries)
  return folder
}

function errorOf(work: () => void): unknown {
  try {
    work()
    return null
  } catch (error) {
    return error
  }
}
