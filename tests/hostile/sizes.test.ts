import {
  closeSync,
  ftruncateSync,
  mkdirSync,
  openSync,
  readFileSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { MOST_RUN_BYTES } from '../../src/cli/read-run-file.ts'
import { readPicture } from '../../src/photos/read-picture.ts'
import { findStocks } from '../../src/print/stocks.ts'
import { readSmallFile } from '../../src/storage/files/read-small-file.ts'
import { openJournalFile } from '../../src/storage/journal/journal-file.ts'
import { NotRecorded } from '../../src/storage/journal/not-recorded.ts'
import { benchWithJob } from '../cli/support/bench.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import { pngChunk } from '../support/photos/encode.ts'
import { screens } from '../ui/support/bench.ts'

/** A file of so many bytes that takes none on the disk. */
function sparse(path: string, bytes: number): string {
  const fd = openSync(path, 'a')
  ftruncateSync(fd, bytes)
  closeSync(fd)
  return path
}

const TEN_GB = 10 * 1000 ** 3

describe('a file without measure', () => {
  test('as the journal is told, the other jobs are listed, and nothing is recorded', () => {
    const on = benchWithJob('begin cover off')
    on.say('new', 'job', 'red single')
    const path = join(on.home, 'blue-twin', 'journal.log')
    truncateSync(path, TEN_GB)
    const { out } = on.say('jobs')
    expect(out).toContain('red single')
    expect(out).toContain('it is longer than the journal of any job')
    for (const line of ['card', 'note: x']) {
      const { code, err } = on.say('--job', '1', line)
      expect(code).toBe(3)
      expect(err).toContain(path)
      expect(err).toContain('it is longer than the journal of any job')
    }
  })

  test('as one line of the journal is damage', () => {
    const on = benchWithJob()
    const path = join(on.home, 'blue-twin', 'journal.log')
    writeFileSync(path, `${readFileSync(path, 'utf8')}${'x'.repeat(3_000_000)}\n`)
    expect(on.say('card').err).toContain('it is longer than any entry')
  })

  test('as a file of commands, of measures or of settings is refused whole', async () => {
    const on = benchWithJob()
    const run = on.say('run', sparse(join(on.home, 'run.txt'), MOST_RUN_BYTES + 1))
    expect(run).toMatchObject({ code: 2 })
    expect(run.err).toContain('longer than 16 MiB, so nothing of it was done')
    mkdirSync(join(on.home, '..', 'labels'))
    sparse(join(on.home, '..', 'labels', 'mine.json'), TEN_GB)
    expect(findStocks(on.home).bad).toMatchObject([{ why: 'too-large' }])
    for (const name of ['.settings.json', '.printing.json', '.chosen']) sparse(join(on.home, name), TEN_GB)
    expect(on.shelf.hasSound()).toBe(true)
    expect((await on.send('labels usual')).code).toBe(0)
    expect(on.say('jobs').code).toBe(0)
    expect(() => readSmallFile(join(on.home, '.settings.json'), 10)).toThrow(/EOVERFLOW/)
  })
})

test('a journal is not written longer than it could be read', () => {
  const path = join(temporaryFolder(), 'journal.log')
  const parse = (raw: unknown) => raw as { n: number; id: string }
  const file = openJournalFile(path, { parse, most: 100 })
  const journal = file.read()
  journal.entries.push({ n: 1, id: 'a' })
  file.write(journal)
  const before = readFileSync(path)
  journal.entries.push({ n: 2, id: 'b'.repeat(100) })
  expect(() => file.write(journal)).toThrow(new NotRecorded('journal-full', path))
  expect(readFileSync(path)).toEqual(before)
  journal.entries.push({ n: 2, id: 'c' })
  file.write(journal)
  expect(openJournalFile(path, { parse, most: 100 }).read().entries).toHaveLength(2)
})

test('a picture that would unfold to more than there is memory is not decoded', async () => {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(200_000, 0)
  header.writeUInt32BE(200_000, 4)
  header.set([8, 2, 0, 0, 0], 8)
  const png = Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    pngChunk('IHDR', header),
    pngChunk('IDAT', Buffer.alloc(20)),
    pngChunk('IEND', Buffer.alloc(0)),
  ])
  expect(await readPicture(png)).toEqual({ kind: 'broken', why: 'too-many-pixels' })
})

describe('a million signs in one line', () => {
  const LONG = 'bolts and '.repeat(100_000)

  test('on the command line are refused in a sentence', () => {
    const on = benchWithJob('begin cover off')
    for (const line of [`note: ${LONG}`, `off ${LONG}`, LONG, '('.repeat(1_000_000), `where ${LONG}`]) {
      const { code, out, err } = on.say(line)
      expect(code).toBe(2)
      expect(out).toBe('')
      expect(err.length).toBeLessThan(2000)
    }
    expect(on.session().entries()).toHaveLength(2)
  })

  test.each(['typed', 'pasted'])(
    'at the desk, %s, leave it as it was',
    (how) => {
      const on = benchWithJob('begin cover off')
      const { type, answer, rows, desk } = screens(on.shelf)
      type(how === 'typed' ? `${LONG}\r` : `\x1b[200~${LONG}\x1b[201~\r`)
      expect(desk.session?.entries()).toHaveLength(2)
      expect(answer()).toContain('NOT UNDERSTOOD')
      for (const row of rows()) expect(row.length).toBeLessThanOrEqual(80)
    },
    60_000,
  )
})
