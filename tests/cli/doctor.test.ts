import { cpSync, mkdirSync, readdirSync, readFileSync, renameSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { runDoctor } from '../../src/cli/errands/doctor.ts'
import { fileOf, linesOf } from '../storage/support/journal-bytes.ts'
import { type Bench, benchWithJob } from './support/bench.ts'

describe('a job as it should be', () => {
  test('is said to be whole, by number, by name, and where none is named', async () => {
    const made = job()
    for (const which of [['1'], ['blue', 'twin'], []]) {
      const { code, out, err } = await made.send('doctor', ...which)
      expect([code, err]).toEqual([0, ''])
      expect(out).toBe('the record is whole: 4 entries, each in its place and as it was written\n')
    }
    expect(filesIn(made)).toEqual(['journal.log'])
  })

  test('what is not one', async () => {
    const made = job()
    expect(await made.send('doctor', 'red', 'twin')).toMatchObject({ code: 4, out: '' })
    expect((await made.send('doctor', 'from', './nowhere')).err).toContain('There is nothing at ./nowhere')
  })
})

describe('damage that is certain', () => {
  test('is explained, and nothing is written', async () => {
    const made = flipped(job())
    const before = journalOf(made)
    const { code, out, err } = await made.send('doctor', '1')
    expect(code).toBe(3)
    expect(out).toBe('line 3: one bit of entry 3 is wrong, and which one is known\n')
    expect(err).toContain(
      'journal.log is damaged in 1 place, and all of it can be put right with nothing lost.',
    )
    expect(err).toContain('"putback doctor 1 mend" does that, and keeps a copy of the file as it is.')
    expect(journalOf(made).equals(before)).toBe(true)
    expect(filesIn(made)).toEqual(['journal.log'])
  })

  test('is mended, with a copy of what was there', async () => {
    const made = job()
    const whole = journalOf(made)
    const hurt = journalOf(flipped(made))
    const { code, out } = await made.send('doctor', 'mend')
    expect(code).toBe(0)
    expect(out).toContain('journal.log is put right: 4 entries, nothing lost')
    expect(journalOf(made).equals(whole)).toBe(true)
    expect(readFileSync(join(folderOf(made), 'journal.before-mending-1')).equals(hurt)).toBe(true)
    const again = await made.send('doctor', 'mend')
    expect([again.code, again.out]).toEqual([0, expect.stringContaining('journal.before-mending-1 holds')])
    made.told('off 2 side bolts into bag 1')
    expect((await made.send('doctor')).code).toBe(0)
  })

  test('the facts, for a program', async () => {
    const { code, out } = await flipped(job()).send('--json', 'doctor')
    expect([code, JSON.parse(out)]).toEqual([
      3,
      expect.objectContaining({
        ok: false,
        code: 'damaged',
        doctor: {
          verdict: 'certain',
          entries: 4,
          findings: [{ kind: 'flipped', line: 3, last: 3, entry: 3, isSure: true }],
          behind: [],
          concerns: [],
          copies: [],
        },
      }),
    ])
  })
})

describe('a whole entry that was set aside because its line had no end', () => {
  test.each([
    ['cut off', (bytes: Buffer) => bytes.subarray(0, -1)],
    ['of a wrong bit', (bytes: Buffer) => Buffer.concat([bytes.subarray(0, -1), Buffer.from([0x0a ^ 0x20])])],
  ])('%s: it is taken back, as long as nothing was recorded after it', async (_what, tear) => {
    const made = job()
    const whole = journalOf(made)
    writeFileSync(join(folderOf(made), 'journal.log'), tear(whole))
    expect(made.say('card').err).toContain('set aside')
    expect(filesIn(made)).toEqual(['journal.log', 'journal.torn-1'])
    const { code, out } = await made.send('doctor')
    expect([code, out]).toEqual([3, expect.stringContaining('entry 4: whole in another file')])
    expect((await made.send('doctor', 'mend')).code).toBe(0)
    expect(journalOf(made).equals(whole)).toBe(true)
  })

  test('what was said again instead stays', async () => {
    const made = job()
    writeFileSync(join(folderOf(made), 'journal.log'), journalOf(made).subarray(0, -1))
    made.told('off 8 M10x140 head bolts into bag 1')
    expect((await made.send('doctor')).code).toBe(0)
  })
})

describe('damage that is not certain', () => {
  test('is not mended; what stands behind it is told in words', async () => {
    const made = without(job(), 3)
    const { code, out, err } = await made.send('doctor', 'mend')
    expect(code).toBe(1)
    expect(out).toMatch(
      /^before line 3: entry 3 missing\nbehind the damage, to be said again \(1 entry, those with \? not proved\):\n {5}4\? 2030-01-01 \d\d:\d\d {2}came off: .*head bolts/,
    )
    expect(err).toContain('It is not certain what is right, so nothing was changed.')
    expect(err).toContain('"putback doctor from PATH" takes what is missing')
    expect(filesIn(made)).toEqual(['journal.log'])
  })

  test('cut: what stands is kept, the rest lies in a file of its own, and work goes on', async () => {
    const made = job()
    const lines = linesOf(journalOf(made))
    const { code, out } = await without(made, 3).send('doctor', '1', 'cut')
    expect(code).toBe(0)
    expect(out).toContain(
      'journal.log is cut: 2 entries stand, and what came after them is not recorded any more',
    )
    expect(journalOf(made).equals(Buffer.concat(lines.slice(0, 2)))).toBe(true)
    expect(readFileSync(join(folderOf(made), 'journal.cut-1')).equals(lines[3] as Buffer)).toBe(true)
    made.told('off 8 M10x140 head bolts into bag 1')
    expect((await made.send('doctor')).code).toBe(0)
  })

  test.each([['folder'], ['journal'], ['back-up']])('from a copy: a %s', async (what) => {
    const made = job()
    const whole = journalOf(made)
    const stick = join(made.home, '..', 'stick')
    mkdirSync(stick)
    const copy = join(stick, what === 'journal' ? 'journal.log' : 'copy')
    if (what === 'folder') cpSync(folderOf(made), copy, { recursive: true })
    if (what === 'journal') cpSync(join(folderOf(made), 'journal.log'), copy)
    if (what === 'back-up') expect((await made.send('backup', 'to', stick)).code).toBe(0)
    const path = what === 'back-up' ? join(stick, readdirSync(stick)[0] as string) : copy
    const { code, out } = await without(made, 2, 3).send('doctor', 'from', path)
    expect([code, out]).toEqual([0, expect.stringContaining('entries 2 to 3: whole in another file')])
    expect(journalOf(made).equals(whole)).toBe(true)
  })

  test('from the folder of a copy among the jobs, by its name', async () => {
    const made = job()
    const whole = journalOf(made)
    cpSync(folderOf(made), join(made.home, 'blue-twin-copy'), { recursive: true })
    const patient = {
      folder: folderOf(without(made, 3)),
      home: made.home,
      cwd: join(made.home, '..'),
      ask: String,
    }
    expect(await runDoctor({ how: 'from', path: 'blue-twin-copy' }, patient)).toMatchObject({ ok: true })
    expect(journalOf(made).equals(whole)).toBe(true)
  })

  test('a copy that has not what is missing', async () => {
    const made = job()
    const copy = join(made.home, '..', 'copy')
    cpSync(folderOf(made), copy, { recursive: true })
    writeFileSync(join(copy, 'journal.log'), journalOf(without(made, 3)))
    const { code, err } = await made.send('doctor', 'from', copy)
    expect([code, err]).toEqual([1, expect.stringContaining('The copy does not have what is missing')])
  })
})

describe('damage in the first line', () => {
  test('the job is examined by the name of its folder, and nothing is cut where nothing would stand', async () => {
    const made = job()
    const copy = join(made.home, '..', 'copy')
    cpSync(folderOf(made), copy, { recursive: true })
    without(made, 1)
    expect(made.say('card').err).toContain('"putback doctor blue-twin" says what can be saved')
    const looked = await made.send('doctor', 'blue-twin')
    expect([looked.code, looked.err]).toEqual([3, expect.stringContaining('not even its first entry stands')])
    const cut = await made.send('doctor', 'blue-twin', 'cut')
    expect([cut.code, cut.err]).toEqual([1, expect.stringContaining('Nothing would be left of the job')])
    expect((await made.send('doctor', 'blue-twin', 'from', copy)).code).toBe(0)
    expect((await made.send('doctor')).out).toContain('the record is whole: 4 entries')
  })

  test('a torn first line is not taken for a job that was never begun', async () => {
    const made = job()
    writeFileSync(join(folderOf(made), 'journal.log'), journalOf(made).subarray(0, 100))
    const { code, out, err } = await made.send('doctor', 'blue-twin')
    expect([code, out]).toEqual([3, 'line 1: 100 bytes without the end of a line, no whole entry\n'])
    expect(err).not.toContain('nothing lost')
    expect(filesIn(made)).toEqual(['journal.log'])
  })
})

describe('an entry that breaks a law', () => {
  test('is named, and cut off with what follows it', async () => {
    const made = job()
    const lines = journalOf(made).toString().split('\n')
    const entries = lines.slice(0, 4).map((line) => JSON.parse(line.slice(9)))
    // Two bags of the same number: no program of ours writes that, and its checksums are right.
    entries.splice(3, 0, { ...entries[1], id: 'another' })
    writeFileSync(
      join(folderOf(made), 'journal.log'),
      fileOf(entries.map((entry, at) => ({ ...entry, n: at + 1 }))),
    )
    const { code, out } = await made.send('doctor')
    expect([code, out]).toEqual([3, expect.stringContaining('line 4: entry 4 tells what cannot be')])
    expect((await made.send('doctor', 'cut')).out).toContain('3 entries stand')
    expect((await made.send('doctor')).code).toBe(0)
  })
})

describe('around the journal', () => {
  test('a copy of the same job beside it', async () => {
    const made = job()
    cpSync(folderOf(made), join(made.home, 'blue-twin-copy'), { recursive: true })
    const { code, out } = await made.send('doctor', './blue-twin')
    expect([code, out]).toEqual([0, expect.stringContaining('blue-twin-copy is a copy of it')])
  })

  test.skipIf(process.platform === 'win32')('rights, and a link in the place of the pictures', async () => {
    const made = job()
    const folder = folderOf(made)
    mkdirSync(join(made.home, '..', 'elsewhere'))
    symlinkSync(join(made.home, '..', 'elsewhere'), join(folder, 'photos'))
    const { code, out } = await made.send('doctor')
    expect([code, out]).toEqual([
      1,
      expect.stringContaining('photos is a link, and nothing is read through it'),
    ])
  })

  test.skipIf(process.platform === 'win32')('a journal that is a link is no journal', async () => {
    const made = job()
    const path = join(folderOf(made), 'journal.log')
    renameSync(path, join(made.home, 'elsewhere.log'))
    symlinkSync(join(made.home, 'elsewhere.log'), path)
    expect((await made.send('doctor', './blue-twin')).code).toBe(4)
  })
})

function job(): Bench {
  return benchWithJob('bag head', 'begin cylinder head off', 'off 8 M10x140 head bolts into bag 1')
}

function folderOf({ home }: Bench): string {
  return join(home, 'blue-twin')
}

function journalOf(made: Bench): Buffer {
  return readFileSync(join(folderOf(made), 'journal.log'))
}

function filesIn(made: Bench): string[] {
  return readdirSync(folderOf(made)).sort()
}

/** One bit of the third line is wrong. */
function flipped(made: Bench): Bench {
  const bytes = journalOf(made)
  const at = bytes.indexOf('cylinder head')
  bytes[at] = (bytes[at] as number) ^ 4
  writeFileSync(join(folderOf(made), 'journal.log'), bytes)
  return made
}

function without(made: Bench, ...entries: number[]): Bench {
  const lines = linesOf(journalOf(made)).filter((_, index) => !entries.includes(index + 1))
  writeFileSync(join(folderOf(made), 'journal.log'), Buffer.concat(lines))
  return made
}
