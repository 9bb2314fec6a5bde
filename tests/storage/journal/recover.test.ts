import { appendFileSync, existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'
import { setAsideTornEnd } from '../../../src/storage/journal/recover.ts'
import { faultyFileSystem } from '../support/faulty-file-system.ts'
import { note, notes, parseNote } from '../support/notes.ts'
import { recordingFileSystem } from '../support/recording-file-system.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

describe('a torn end', () => {
  test('every way to cut off the last two lines: the rest stands, the torn bytes are kept, and it goes on', () => {
    const written = notes(6)
    const file = journalOf(written)
    const keptLines = file
      .toString()
      .split(/(?<=\n)/)
      .slice(0, 4)
      .join('')
    for (let length = keptLines.length; length < file.length; length += 1) {
      const folder = temporaryFolder()
      const path = join(folder, 'journal.log')
      writeFileSync(path, file.subarray(0, length))
      const good = file.subarray(0, file.subarray(0, length).lastIndexOf('\n') + 1)
      const whole = good.toString().split('\n').length - 1
      const torn = file.subarray(good.length, length)

      const store = openJournal(folder, { parse: parseNote })
      expect(store.entries()).toEqual(written.slice(0, whole))
      expect([store.problem, store.readOnly]).toEqual([null, null])
      expect(readFileSync(path)).toEqual(good)
      const copy = join(folder, 'journal.torn-1')
      expect(store.setAside).toEqual(torn.length === 0 ? [] : [{ path: copy, bytes: torn.length }])
      if (torn.length > 0) expect(readFileSync(copy)).toEqual(torn)

      store.append(() => [note(whole + 1, 'and on')])
      expect(openJournal(folder, { parse: parseNote }).entries()).toEqual([
        ...written.slice(0, whole),
        note(whole + 1, 'and on'),
      ])
    }
  })

  test('a copy never takes the place of an older one', () => {
    const { folder, path, goodBytes } = tornJournal('first')
    writeFileSync(join(folder, 'journal.torn-1'), 'older')
    expect(setAsideTornEnd(path, goodBytes)).toEqual({ path: join(folder, 'journal.torn-2'), bytes: 5 })
    appendFileSync(path, 'second')
    expect(setAsideTornEnd(path, goodBytes)).toEqual({ path: join(folder, 'journal.torn-3'), bytes: 6 })
    const copies = readdirSync(folder)
      .filter((name) => name.includes('torn'))
      .sort()
    expect(copies.map((name) => readFileSync(join(folder, name), 'utf8'))).toEqual([
      'older',
      'first',
      'second',
    ])
    expect(statSync(path).size).toBe(goodBytes)
  })

  test('the copy and its name are on the disk before the journal is cut', () => {
    const calls: string[] = []
    const { path, goodBytes } = tornJournal('deadbeef')
    setAsideTornEnd(path, goodBytes, recordingFileSystem(calls))
    expect(calls).toEqual(['writeSync', 'fsyncSync', 'fsyncSync', 'ftruncateSync', 'fsyncSync'])
  })

  test('nothing behind the good bytes is nothing to do', () => {
    const { folder, path, goodBytes } = tornJournal('')
    expect(setAsideTornEnd(path, goodBytes)).toBeNull()
    expect(readdirSync(folder)).toEqual(['journal.log'])
  })

  test('any call may fail: the torn bytes are in the journal, or whole in a copy', () => {
    for (let at = 1; ; at += 1) {
      const { folder, path, goodBytes } = tornJournal('deadbeef {"v":1')
      const good = readFileSync(path).subarray(0, goodBytes)
      const fs = faultyFileSystem()
      fs.plant({ at, errno: 'EIO', onwards: true })
      const failed = isThrown(() => setAsideTornEnd(path, goodBytes, fs))
      if (fs.hit === null) {
        expect(at).toBeGreaterThan(8)
        break
      }
      const journal = readFileSync(path)
      const copy = join(folder, 'journal.torn-1')
      expect(journal.subarray(0, goodBytes)).toEqual(good)
      if (journal.length === goodBytes) expect(readFileSync(copy, 'utf8')).toBe('deadbeef {"v":1')
      else expect(failed).toBe(true)

      const store = openJournal(folder, { parse: parseNote })
      expect([store.entries(), store.problem]).toEqual([notes(3), null])
      expect(existsSync(copy)).toBe(true)
    }
  })
})

function journalOf(entries: ReturnType<typeof notes>): Buffer {
  const folder = temporaryFolder()
  openJournal(folder, { parse: parseNote }).append(() => entries)
  return readFileSync(join(folder, 'journal.log'))
}

/** Three entries and what was left of a fourth. */
function tornJournal(torn: string): { folder: string; path: string; goodBytes: number } {
  const folder = temporaryFolder()
  const path = join(folder, 'journal.log')
  const good = journalOf(notes(3))
  writeFileSync(path, good)
  appendFileSync(path, torn)
  return { folder, path, goodBytes: good.length }
}

function isThrown(work: () => void): boolean {
  try {
    work()
    return false
  } catch {
    return true
  }
}
