import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { LowSync } from 'lowdb'
import { describe, expect, test } from 'vitest'
import { type FileSystem, nodeFileSystem } from '../../../src/storage/files/file-system.ts'
import { type Journal, type JournalFile, openJournalFile } from '../../../src/storage/journal/journal-file.ts'
import { NotRecorded } from '../../../src/storage/journal/not-recorded.ts'
import { faultyFileSystem } from '../support/faulty-file-system.ts'
import { type Note, note, notes, parseNote } from '../support/notes.ts'
import { recordingFileSystem } from '../support/recording-file-system.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

describe('under lowdb', () => {
  test('a missing file is an empty journal', () => {
    const { file, db, path } = journal()
    expect(db.data.entries).toEqual([])
    expect(file.problem).toBeNull()
    expect(existsSync(path)).toBe(false)
  })

  test('entries are on the disk after write, and there again after read', () => {
    const { db, path } = journal(notes(2))
    db.update(({ entries }) => entries.push(note(3)))
    expect(journalAt(path).db.data.entries).toEqual(notes(3))
  })

  test('several entries are one write, one sync; the folder is synced when the file is new', () => {
    const calls: string[] = []
    const { db, path } = journal([], recordingFileSystem(calls))
    calls.length = 0
    db.update(({ entries }) => entries.push(...notes(3)))
    expect(calls).toEqual(['writeSync', 'fdatasyncSync', 'fsyncSync'])
    calls.length = 0
    db.update(({ entries }) => entries.push(note(4), note(5)))
    expect(calls).toEqual(['writeSync', 'fdatasyncSync'])
    expect(journalAt(path).db.data.entries).toEqual(notes(5))
  })

  test('nothing new is no write', () => {
    const { db, path } = journal(notes(2))
    const before = statSync(path)
    db.write()
    expect(statSync(path)).toMatchObject({ size: before.size, mtimeMs: before.mtimeMs })
  })

  test.skipIf(process.platform === 'win32')('the file is for its user only', () => {
    expect(statSync(journal(notes(1)).path).mode & 0o777).toBe(0o600)
  })

  test('what others append is read, and only that, into the same array', () => {
    const { db, file, path } = journal(notes(2))
    const { entries } = db.data
    const [first] = entries
    const other = journalAt(path)
    other.db.update((data) => data.entries.push(note(3)))
    db.read()
    expect(db.data.entries).toBe(entries)
    expect(entries[0]).toBe(first)
    expect(entries).toEqual(notes(3))
    db.update((data) => data.entries.push(note(4)))
    other.db.read()
    expect(other.db.data.entries).toEqual(notes(4))
    expect(other.file.stamp).toBe(file.stamp)
  })

  test('the journal holds what the file says, not what was handed in', () => {
    const { db } = journal()
    const mine = note(1)
    db.update(({ entries }) => entries.push(mine))
    mine.text = 'changed afterwards'
    expect(db.data.entries).toEqual([note(1)])
  })
})

describe('what was recorded stays', () => {
  test.each<[string, (entries: Note[]) => void]>([
    ['an entry removed', (entries) => entries.pop()],
    ['all removed', (entries) => entries.splice(0)],
    ['the last replaced', (entries) => entries.splice(2, 1, note(3, 'something else'))],
    ['the last replaced by its like', (entries) => entries.splice(2, 1, note(3))],
    ['one put in front', (entries) => entries.unshift(note(4))],
    [
      'two swapped, one added',
      (entries) => entries.splice(0, 2, entries[1] as Note, entries[0] as Note, note(4)),
    ],
  ])('%s: refused, and put right in memory', (_, spoil) => {
    const { db, path } = journal(notes(3))
    const before = readFileSync(path)
    expect(() => db.update(({ entries }) => spoil(entries))).toThrow(
      expect.objectContaining({ code: 'not-append-only' }),
    )
    expect(db.data.entries).toEqual(notes(3))
    expect(readFileSync(path)).toEqual(before)
    db.update(({ entries }) => entries.push(note(4)))
    expect(journalAt(path).db.data.entries).toEqual(notes(4))
  })

  test('a recorded entry cannot be edited', () => {
    const { db } = journal(notes(1))
    expect(() => Object.assign(db.data.entries[0] as Note, { text: 'none' })).toThrow(TypeError)
  })

  test.each([
    ['a number out of turn', [note(4), note(6)]],
    ['a shape that the reader refuses', [{ ...note(4), type: 'vanished' }]],
    ['a value that JSON cannot carry', [{ ...note(4), v: Number.NaN }]],
    ['more than fits on a line', [note(4, 'x'.repeat(1024 * 1024))]],
    ['a circle', [circular()]],
  ])('%s is refused before the file is touched', (_, added) => {
    const { db, path } = journal(notes(3))
    const before = readFileSync(path)
    expect(() => db.update(({ entries }) => entries.push(...added))).toThrow(
      expect.objectContaining({ code: 'unreadable-entry', takenBack: true }),
    )
    expect(readFileSync(path)).toEqual(before)
    db.update(({ entries }) => entries.push(note(4)))
    expect(db.data.entries).toEqual(notes(4))
  })
})

describe('the file changed underneath', () => {
  test.each<[string, (path: string) => void]>([
    ['shorter', (path) => truncateSync(path, statSync(path).size - 1)],
    ['gone', (path) => rmSync(path)],
    ['another job', (path) => writeJournal(path, notes(9, 'b'))],
    ['as long, but another', (path) => writeJournal(path, notes(3, 'b'))],
  ])('%s: replaced, nothing is written, what is known stays', (_, change) => {
    const { db, file, path } = journal(notes(3))
    change(path)
    const changed = existsSync(path) && readFileSync(path)
    db.read()
    expect(file.problem).toEqual({ kind: 'replaced' })
    expect(db.data.entries).toEqual(notes(3))
    expect(() => db.update(({ entries }) => entries.push(note(4)))).toThrow(
      expect.objectContaining({ code: 'replaced' }),
    )
    expect(existsSync(path) && readFileSync(path)).toEqual(changed)
  })

  test('the right file is put back: it goes on', () => {
    const { db, file, path } = journal(notes(3))
    const kept = readFileSync(path)
    rmSync(path)
    db.read()
    writeFileSync(path, kept)
    db.read()
    expect(file.problem).toBeNull()
    db.update(({ entries }) => entries.push(note(4)))
    expect(journalAt(path).db.data.entries).toEqual(notes(4))
  })

  test('another wrote after the last read: refused until it is read', () => {
    const { db, path } = journal(notes(2))
    journalAt(path).db.update(({ entries }) => entries.push(note(3, 'theirs')))
    const before = readFileSync(path)
    expect(() => db.update(({ entries }) => entries.push(note(3, 'ours')))).toThrow(
      expect.objectContaining({ code: 'changed-underneath', takenBack: true }),
    )
    expect(readFileSync(path)).toEqual(before)
    expect(() => db.update(({ entries }) => entries.push(note(3, 'ours')))).toThrow(
      expect.objectContaining({ code: 'read-first' }),
    )
    db.read()
    db.update(({ entries }) => entries.push(note(4)))
    expect(db.data.entries).toEqual([...notes(2), note(3, 'theirs'), note(4)])
  })

  test('a torn end: nothing is written behind it', () => {
    const { db, file, path } = journal(notes(2))
    appendFileSync(path, '0a1b2c3d {"v":1')
    expect(() => db.update(({ entries }) => entries.push(note(3)))).toThrow(
      expect.objectContaining({ code: 'changed-underneath' }),
    )
    db.read()
    expect(file.problem).toMatchObject({ kind: 'torn', line: 3, bytes: 15 })
    expect(() => db.update(({ entries }) => entries.push(note(3)))).toThrow(
      expect.objectContaining({ code: 'torn' }),
    )
  })

  test('a line that another was still writing is read when it is whole', () => {
    const { db, file, path } = journal(notes(2))
    const whole = temporaryFolder()
    writeJournal(join(whole, 'journal.log'), notes(3))
    const line = readFileSync(join(whole, 'journal.log')).subarray(file.goodBytes)
    appendFileSync(path, line.subarray(0, 40))
    db.read()
    expect([db.data.entries.length, file.problem?.kind]).toEqual([2, 'torn'])
    appendFileSync(path, line.subarray(40))
    db.read()
    expect([db.data.entries.length, file.problem]).toEqual([3, null])
  })

  test('a damaged line: the good ones are there, nothing is written', () => {
    const { path } = journal(notes(5))
    const spoiled = readFileSync(path, 'utf8').replace('tray slot 3', 'tray slot 8')
    writeFileSync(path, spoiled)
    const { db, file } = journalAt(path)
    expect(db.data.entries).toEqual(notes(2))
    expect(file.problem).toMatchObject({ kind: 'damaged', line: 3, why: 'checksum' })
    expect(() => db.update(({ entries }) => entries.push(note(3)))).toThrow(
      expect.objectContaining({ code: 'damaged' }),
    )
    expect(readFileSync(path, 'utf8')).toBe(spoiled)
  })

  test('a folder in the place of the file is the system’s own error', () => {
    const path = join(temporaryFolder(), 'journal.log')
    mkdirSync(path)
    expect(() => journalAt(path)).toThrow(expect.objectContaining({ code: 'EISDIR' }))
  })
})

describe('a failing disk', () => {
  test.each([
    ['openSync', 'EROFS'],
    ['openSync', 'EACCES'],
    ['fstatSync', 'EIO'],
    ['writeSync', 'ENOSPC'],
    ['writeSync', 'EIO'],
    ['writeSync', 'short'],
    ['fdatasyncSync', 'EIO'],
    ['fdatasyncSync', 'EDQUOT'],
  ] as const)('%s %s: not recorded, taken back, refused until read again', (call, errno) => {
    const fs = faultyFileSystem()
    const { db, path } = journal(notes(2), fs)
    const before = readFileSync(path)
    fs.plantIn(call, errno)
    const error = failureOf(() => db.update(({ entries }) => entries.push(note(3))))
    expect(fs.hit).toBe(call)
    expect(error).toMatchObject({ code: errno === 'short' ? 'short-write' : errno, path, takenBack: true })
    expect(db.data.entries).toEqual(notes(2))
    expect(readFileSync(path)).toEqual(before)
    expect(() => db.update(({ entries }) => entries.push(note(3)))).toThrow(
      expect.objectContaining({ code: 'read-first' }),
    )
    db.read()
    db.update(({ entries }) => entries.push(note(3)))
    expect(journalAt(path).db.data.entries).toEqual(notes(3))
  })

  test('what is taken back is taken back for good', () => {
    const calls: string[] = []
    const fs = faultyFileSystem()
    const { db } = journal(notes(2), recordingFileSystem(calls, fs))
    fs.plantIn('fdatasyncSync', 'EIO')
    failureOf(() => db.update(({ entries }) => entries.push(note(3))))
    // What was there before is written once more, for nobody here knows whether it was flushed.
    expect(calls).toEqual(['writeSync', 'writeSync', 'fdatasyncSync', 'ftruncateSync', 'fsyncSync'])
  })

  test('what others wrote is flushed when that is asked for, once', () => {
    const calls: string[] = []
    const { file, path } = journal(notes(2), recordingFileSystem(calls))
    file.flush()
    file.flush()
    expect(calls).toEqual(['writeSync', 'fsyncSync', 'fsyncSync'])
    expect(journalAt(path).db.data.entries).toEqual(notes(2))
  })

  test.each(['writeSync', 'fsyncSync'] as const)(
    'flushing them is refused by the disk in %s, and said',
    (call) => {
      const fs = faultyFileSystem()
      const { db, file, path } = journal(notes(2), fs)
      fs.plantIn(call, 'EIO')
      expect(failureOf(() => file.flush())).toMatchObject({ code: 'EIO', path })
      expect(failureOf(() => file.flush())).toMatchObject({ code: 'read-first' })
      db.read()
      file.flush()
      expect(journalAt(path).db.data.entries).toEqual(notes(2))
    },
  )

  test('the first entry ever, and its folder cannot be synced: not recorded', () => {
    const fs = faultyFileSystem()
    const { db, path } = journal([], fs)
    fs.plantIn('fsyncSync', 'EIO')
    expect(failureOf(() => db.update(({ entries }) => entries.push(note(1))))).toMatchObject({ code: 'EIO' })
    expect(readFileSync(path, 'utf8')).toBe('')
    expect(journalAt(path).db.data.entries).toEqual([])
  })

  test('it does not come back: the bytes stay torn, and the error says so', () => {
    const fs = faultyFileSystem()
    const { db, path } = journal([], fs)
    let writes = 0
    const broken: FileSystem = {
      ...fs,
      writeSync: (fd, bytes) => {
        writes += 1
        return fs.writeSync(fd, bytes)
      },
      ftruncateSync: () => {
        throw Object.assign(new Error('EIO'), { code: 'EIO' })
      },
    }
    const second = journalAt(path, broken)
    second.db.update(({ entries }) => entries.push(...notes(2)))
    writes = 0
    fs.plantIn('writeSync', 'ENOSPC')
    const error = failureOf(() => second.db.update(({ entries }) => entries.push(note(3))))
    expect(error).toMatchObject({ code: 'ENOSPC', takenBack: false })
    expect(writes).toBe(1)
    expect(second.db.data.entries).toEqual(notes(2))
    db.read()
    expect(db.data.entries).toEqual(notes(2))
    const again = journalAt(path)
    expect([again.db.data.entries, again.file.problem?.kind]).toEqual([notes(2), 'torn'])
  })

  test('what another wrote is written over itself before anything follows on it, as far back as an act is long', () => {
    const { path } = journal(notes(2))
    const second = journalAt(path)
    journalAt(path).db.update(({ entries }) => entries.push(note(3)))
    const before = readFileSync(path)
    const written: [bytes: string, at: number | null | undefined][] = []
    const watched: FileSystem = {
      ...nodeFileSystem,
      writeSync: (fd, bytes, offset, length, position) => {
        written.push([Buffer.from(bytes).toString(), position])
        return nodeFileSystem.writeSync(fd, bytes, offset, length, position)
      },
    }
    const { db } = journalAt(path, watched)
    db.update(({ entries }) => entries.push(note(4)))
    db.update(({ entries }) => entries.push(note(5)))
    expect(written.map(([bytes, at]) => [bytes.length, at])).toEqual([
      [before.length, 0],
      [expect.any(Number), undefined],
      [expect.any(Number), undefined],
    ])
    expect(written[0]?.[0]).toBe(before.toString())
    second.db.read()
    expect(second.db.data.entries).toEqual(notes(5))

    const long = Array.from({ length: 400 }, (_, index) => note(index + 6, 'x'.repeat(200)))
    second.db.update(({ entries }) => entries.push(...long))
    written.length = 0
    const end = readFileSync(path).length
    journalAt(path, watched).db.update(({ entries }) => entries.push(note(406)))
    expect(written.map(([, at]) => at)).toEqual([end - 64 * 1024, undefined])
  })

  test('what another wrote meanwhile is not cut off', () => {
    const { db, path } = journal([])
    const torn = 'deadbeef {"other'
    let isFull = false
    const intruded: FileSystem = {
      ...nodeFileSystem,
      writeSync: (...args) => {
        if (!isFull) return nodeFileSystem.writeSync(...args)
        appendFileSync(path, torn)
        throw Object.assign(new Error('EIO'), { code: 'EIO' })
      },
    }
    const second = journalAt(path, intruded)
    second.db.update(({ entries }) => entries.push(...notes(2)))
    isFull = true
    const error = failureOf(() => second.db.update(({ entries }) => entries.push(note(3))))
    expect(error).toMatchObject({ code: 'EIO', takenBack: false })
    expect(readFileSync(path, 'utf8')).toMatch(new RegExp(`${torn}$`))
    db.read()
    expect(db.data.entries).toEqual(notes(2))
  })

  test('a read that fails changes nothing', () => {
    const fs = faultyFileSystem()
    const { db, path } = journal(notes(2), fs)
    journalAt(path).db.update(({ entries }) => entries.push(note(3)))
    fs.plantIn('readSync', 'EIO')
    expect(() => db.read()).toThrow(expect.objectContaining({ code: 'EIO' }))
    expect(db.data.entries).toEqual(notes(2))
    db.read()
    expect(db.data.entries).toEqual(notes(3))
  })
})

interface Opened {
  path: string
  file: JournalFile<Note>
  db: LowSync<Journal<Note>>
}

/** A journal in a new folder, with entries in it, open through `fs`. */
function journal(entries: Note[] = [], fs: FileSystem = nodeFileSystem): Opened {
  const path = join(temporaryFolder(), 'journal.log')
  if (entries.length > 0) writeJournal(path, entries)
  return journalAt(path, fs)
}

function journalAt(path: string, fs: FileSystem = nodeFileSystem): Opened {
  const file = openJournalFile(path, { parse: parseNote, fs })
  const db = new LowSync<Journal<Note>>(file, { entries: [] })
  db.read()
  return { path, file, db }
}

function writeJournal(path: string, entries: Note[]): void {
  rmSync(path, { force: true })
  const { db } = journalAt(path)
  db.update((data) => data.entries.push(...entries))
}

function failureOf(work: () => void): NotRecorded {
  try {
    work()
  } catch (error) {
    if (error instanceof NotRecorded) return error
    throw error
  }
  return expect.fail('it was recorded')
}

function circular(): Note {
  const circle = note(4) as Note & { self?: unknown }
  circle.self = circle
  return circle
}
