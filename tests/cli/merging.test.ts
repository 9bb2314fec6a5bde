import { createHash } from 'node:crypto'
import {
  appendFileSync,
  cpSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { runMerge } from '../../src/cli/errands/merge.ts'
import { DiskShelf } from '../../src/cli/job-shelf.ts'
import type { Command } from '../../src/journal/command.ts'
import { groupedCode, labelCode } from '../../src/label/code.ts'
import { mergeCopy, planCopy } from '../../src/session/merge.ts'
import { writeArchive } from '../../src/storage/backup/write-archive.ts'
import { sessionIn } from '../session/support/sessions.ts'
import { faultyFileSystem } from '../storage/support/faulty-file-system.ts'
import { fileOf } from '../storage/support/journal-bytes.ts'
import { recordingFileSystem } from '../storage/support/recording-file-system.ts'
import { type Bench, bench } from './support/bench.ts'

/** A job on the laptop, and a copy of its folder that is gone on with at the bench. */
function twoCopies(...lines: string[]): { laptop: Bench; other: Bench; copy: string } {
  const laptop = bench()
  laptop.say('new', 'job', 'blue twin')
  laptop.told('begin seat off', 'off 8 M6x25 seat bolts', 'off 2 tank bolts into new bag', 'end', ...lines)
  const other = bench()
  const copy = join(other.home, 'blue-twin')
  cpSync(join(laptop.home, 'blue-twin'), copy, { recursive: true })
  other.shelf.choose(copy)
  return { laptop, other, copy }
}

const journalOf = ({ home }: Bench) => readFileSync(join(home, 'blue-twin', 'journal.log'), 'utf8')

describe('a copy that went its own way', () => {
  test('is taken over at once where all of it fits, and says what it was about', async () => {
    const { laptop, other, copy } = twoCopies()
    other.say('--by', 'Ola', 'note the left one is bent')
    other.told('move tank bolts to bench')
    const theirs = journalOf(other)
    const { code, out } = await laptop.send('merge', copy)
    expect([code, out]).toEqual([
      0,
      expect.stringContaining(`merged with the copy ${copy}: 2 entries taken over\n`),
    ])
    expect(out).toMatch(/\n {4}\d{4}-\d\d-\d\d \d\d:\d\d, Ola {2}note: the left one is bent\n/)
    expect(out).toContain('moved: 2 × tank bolts from bag 2, onto the bench')
    expect(out).toContain('"log 3" shows all of it')
    expect(laptop.say('where tank bolts').out).toContain('2 on the bench')
    expect(journalOf(other)).toBe(theirs)
  })

  test('has nothing new the second time, whoever went on meanwhile', async () => {
    const { laptop, other, copy } = twoCopies()
    other.told('move tank bolts to bench')
    await laptop.send('merge', copy)
    laptop.told('note merged')
    const before = journalOf(laptop)
    const { code, out } = await laptop.send('merge', copy)
    expect([code, out]).toEqual([0, `Nothing to merge: all that ${copy} has is here already\n`])
    expect(journalOf(laptop)).toBe(before)
  })
})

describe('two copies that both went on', () => {
  /** Both moved the same bolts, and both opened a bag 3. */
  const apart = () => {
    const copies = twoCopies()
    copies.laptop.told('begin guard off', 'off 6 guard bolts into new bag', 'end')
    copies.laptop.say('--by', 'Ann', 'move tank bolts to bench')
    copies.other.told('begin pump off', 'off 4 pump bolts into new bag', 'end')
    copies.other.say('--by', 'Ola', 'move tank bolts to spare')
    return copies
  }

  test('are shown both sides of what does not fit, and nothing is written', async () => {
    const { laptop, copy } = apart()
    const before = journalOf(laptop)
    const { code, err } = await laptop.send('merge', copy)
    expect(code).toBe(1)
    expect(err.replace(/\d{4}-\d\d-\d\d \d\d:\d\d/g, 'THEN').split('\n')).toEqual([
      'Nothing is merged yet: 4 entries of the copy are new here, 1 does not fit, 1 bag has a number that is taken.',
      '  4 entries of this record are not in the copy; nothing of that changes.',
      '  1. there, THEN, Ola: moved: 2 × tank bolts from bag 2, to the spares.',
      '     here, entry 9, THEN, Ann: moved: 2 × tank bolts from bag 2, onto the bench.',
      `  Bag 3 there becomes bag 4: write 4 on it, label ${groupedCode(labelCode(1, 4))}.`,
      `"merge ${copy} take" records the 3 that fit and keeps the rest to be settled.`,
      '',
    ])
    expect(journalOf(laptop)).toBe(before)
    expect(readdirSync(join(laptop.home, 'blue-twin'))).toEqual(['journal.log'])
  })

  test('keep what does not fit until it is settled, and hold the first start as long', async () => {
    const { laptop, other, copy } = apart()
    const { code, out } = await laptop.send('merge', copy, 'take')
    expect(code).toBe(0)
    expect(out).toContain(
      `merged with the copy ${copy}: 3 entries taken over; left out: w1; numbers: 3 there is 4 here; its journal is kept as journal.merged-1`,
    )
    expect(out).toContain(`bag 3 there becomes bag 4: write 4 on it, label ${groupedCode(labelCode(1, 4))}`)
    expect(out).toContain('w1 left out: moved: 2 × tank bolts from bag 2, to the spares')
    expect(out).toContain('go on here only: on the other computer')
    expect(readFileSync(join(laptop.home, 'blue-twin', 'journal.merged-1'), 'utf8')).toBe(journalOf(other))
    expect(laptop.say('where pump bolts').out).toContain('4 in bag 4')
    expect(laptop.say('where guard bolts').out).toContain('6 in bag 3')
    expect(laptop.say('where tank bolts').out).toContain('2 on the bench')

    laptop.told(
      'fit pump bolts',
      'done',
      'fit guard bolts',
      'done',
      'fit seat bolts',
      'fit tank bolts',
      'done',
    )
    const held = laptop.say('clear')
    expect([held.code, held.err]).toEqual([
      1,
      expect.stringContaining(
        'w1, left out of a copy, by Ola: moved: 2 × tank bolts from bag 2, to the spares.',
      ),
    ])
    expect(laptop.say('settle w1 because Ann had them in her hand').code).toBe(0)
    expect(laptop.say('clear').code).toBe(0)
    const record = (await laptop.send('record')).out
    expect(record).toContain('MERGED COPIES')
    expect(record).toContain('[Ola]: moved: 2 × tank bolts from bag 2, to the spares')
  })

  test('are not merged a second time, and what was added since comes alone', async () => {
    const { laptop, other, copy } = apart()
    await laptop.send('merge', copy, 'take')
    expect((await laptop.send('merge', copy, 'take')).out).toContain('Nothing to merge')
    other.told('note the gasket is torn', 'move 1 pump bolt from 3 to scrap')
    const { out } = await laptop.send('merge', copy)
    expect(out).toContain('2 entries taken over\n')
    expect(laptop.say('where pump bolts').out).toContain('3 in bag 4')
  })

  test('say on the other side that the merged one has it all', async () => {
    const { laptop, other, copy } = apart()
    await laptop.send('merge', copy, 'take')
    const { code, err } = await other.send('merge', join(laptop.home, 'blue-twin'))
    expect(code).toBe(1)
    expect(err).toContain('The copy was merged with this record already, and has all that is here.')
    expect(err).toContain('Put the folder of the copy in the place of this one and go on with that')
  })

  test('are planned again on what somebody wrote while it was being looked at', () => {
    const { laptop, other } = twoCopies()
    other.told('move tank bolts to spare')
    const [here, terminal] = [laptop.session(), laptop.session()]
    const theirs = other.shelf.open(join(other.home, 'blue-twin')).entries()
    expect(planCopy(here.entries(), theirs)).toMatchObject({ kind: 'planned', plan: { conflicts: [] } })
    terminal.send({ do: 'move', piece: 'p2', into: { kind: 'place', place: 'bench' } })
    const asked = { theirs, copy: 'there', kept: undefined, pictures: new Map(), tell: () => 'moved' }
    const before = journalOf(laptop)
    expect(mergeCopy(here, { ...asked, isTaken: false })).toMatchObject({
      kind: 'to-decide',
      plan: { fits: [], conflicts: [{ why: 'same-thing', against: [{ type: 'moved' }] }] },
    })
    expect(journalOf(laptop)).toBe(before)
    expect(mergeCopy(here, { ...asked, isTaken: true })).toMatchObject({ kind: 'merged' })
    expect([...here.state.leftOut.values()]).toMatchObject([{ id: 'w1', says: 'moved', settled: null }])
  })

  test('have nothing new where another program took it over in the meantime', async () => {
    const { laptop, other, copy } = twoCopies()
    other.told('move tank bolts to bench')
    const theirs = other.session().entries()
    const asked = { copy, kept: undefined, isTaken: false, pictures: new Map(), tell: () => 'moved' }
    const alsoHere = laptop.session()
    const tell = (progress: string) => {
      if (progress === '') expect(mergeCopy(alsoHere, { ...asked, theirs })).toMatchObject({ kind: 'merged' })
    }
    const errand = { errand: 'merge', path: copy, isTaken: true } as const
    const places = { home: laptop.home, cwd: laptop.home }
    const outcome = await runMerge(errand, laptop.session(), places, tell)
    expect(outcome).toMatchObject({
      ok: true,
      entries: [],
      text: [expect.stringContaining('Nothing to merge')],
    })
    expect(readdirSync(join(laptop.home, 'blue-twin'))).toEqual(['journal.log'])
  })

  test('that are together are put onto the disk once more, for a merge before may have been killed', async () => {
    const { laptop, other, copy } = twoCopies()
    other.told('move tank bolts to bench')
    await laptop.send('merge', copy)
    const errand = { errand: 'merge', path: copy, isTaken: false } as const
    const places = { home: laptop.home, cwd: laptop.home }
    const folder = join(laptop.home, 'blue-twin')
    const calls: string[] = []
    const whole = sessionIn(folder, { fs: recordingFileSystem(calls) })
    expect(await runMerge(errand, whole, places, () => undefined)).toMatchObject({ ok: true, entries: [] })
    expect(calls).toContain('fsyncSync')
    const fs = faultyFileSystem()
    const failing = sessionIn(folder, { fs })
    fs.plantIn('fsyncSync', 'EIO')
    expect(await runMerge(errand, failing, places, () => undefined)).toMatchObject({ ok: false, code: 'EIO' })
  })

  test('are found where they lie side by side, and one is named by its folder alone', async () => {
    const { laptop } = twoCopies()
    cpSync(join(laptop.home, 'blue-twin'), join(laptop.home, 'from-the-bench'), { recursive: true })
    laptop.told('note on the laptop')
    laptop.say('--job', join(laptop.home, 'from-the-bench'), 'note on the bench')
    expect(laptop.say('use', '1').err).toContain('they are copies of one job, and in either "merge PATH"')
    expect(laptop.say('jobs').out).toContain(
      'from-the-bench is a copy of it: "merge from-the-bench" brings both together',
    )
    expect((await laptop.send('merge', 'from-the-bench')).out).toContain('note: on the bench')
  })
})

describe('the pictures of a copy', () => {
  const bytes = { here: Buffer.from('taken at the laptop'), there: Buffer.from('taken at the bench') }
  const sum = (picture: Buffer) => createHash('sha256').update(picture).digest('hex')
  const added = (file: string, picture: Buffer): Command => ({
    do: 'add-pictures',
    pictures: [{ file, sha256: sum(picture), taken: null, belongs: null }],
  })
  const photo = (at: Bench, name: string) => join(at.home, 'blue-twin', 'photos', name)
  const record = (at: Bench, file: string, picture: Buffer) => {
    mkdirSync(join(at.home, 'blue-twin', 'photos'), { recursive: true })
    writeFileSync(photo(at, file), picture)
    expect(at.session().send(added(file, picture)).kind).toBe('recorded')
  }

  test('come along, under another name where theirs is that of another picture here', async () => {
    const { laptop, other, copy } = twoCopies()
    record(laptop, '20300101-080000.jpg', bytes.here)
    record(other, '20300101-080000.jpg', bytes.there)
    const { out } = await laptop.send('merge', copy, 'take')
    expect(out).toContain('1 picture copied from there')
    const pictures = [...laptop.session().state.pictures.values()]
    expect(pictures.map(({ id, file }) => [id, file])).toEqual([
      ['g1', '20300101-080000.jpg'],
      ['g2', '20300101-080000-2.jpg'],
    ])
    expect(readFileSync(photo(laptop, '20300101-080000.jpg'))).toEqual(bytes.here)
    expect(readFileSync(photo(laptop, '20300101-080000-2.jpg'))).toEqual(bytes.there)
  })

  test('that are not there as recorded are named, and take no name of another picture', async () => {
    const { laptop, other, copy } = twoCopies()
    record(laptop, '20300101-080000.jpg', bytes.here)
    record(other, '20300101-080000.jpg', bytes.there)
    writeFileSync(photo(other, '20300101-080000.jpg'), 'something else')
    const { out } = await laptop.send('merge', copy, 'take')
    expect(out).toContain('1 picture is not there as recorded: 20300101-080000.jpg')
    expect([...laptop.session().state.pictures.values()].map(({ file }) => file)).toEqual([
      '20300101-080000.jpg',
      '20300101-080000-2.jpg',
    ])
    expect(readdirSync(join(laptop.home, 'blue-twin', 'photos'))).toEqual(['20300101-080000.jpg'])
  })

  test('come out of an archive as well, and a cut one is refused with nothing taken', async () => {
    const { laptop, other, copy } = twoCopies()
    record(other, '20300101-080000.jpg', bytes.there)
    const { path } = await writeArchive(copy, { folder: other.home }, { now: new Date(), program: '1.0.0' })
    const cut = join(other.home, 'cut.zip')
    writeFileSync(cut, readFileSync(path).subarray(0, -40))
    const before = journalOf(laptop)
    const refused = await laptop.send('merge', cut, 'take')
    expect([refused.code === 0, refused.err]).toEqual([false, expect.stringContaining('cut.zip')])
    expect(journalOf(laptop)).toBe(before)

    expect((await laptop.send('merge', path)).out).toContain('1 picture copied from there')
    expect(readFileSync(photo(laptop, '20300101-080000.jpg'))).toEqual(bytes.there)
  })

  test('that went missing here come back from there, also where nothing else is new', async () => {
    const { laptop, copy } = twoCopies()
    record(laptop, '20300101-080000.jpg', bytes.here)
    cpSync(join(laptop.home, 'blue-twin'), copy, { recursive: true, force: true })
    rmSync(photo(laptop, '20300101-080000.jpg'))
    const { out } = await laptop.send('merge', copy)
    expect(out).toContain('Nothing to merge')
    expect(out).toContain('1 picture of this job that was missing here came from there')
    expect(readFileSync(photo(laptop, '20300101-080000.jpg'))).toEqual(bytes.here)
  })
})

test('a disk that fails at any call leaves the record as it was, or has all of the merge', async () => {
  const { laptop, other, copy } = twoCopies()
  const photos = join(copy, 'photos')
  mkdirSync(photos)
  writeFileSync(join(photos, '20300101-080000.jpg'), 'chain')
  const sha256 = createHash('sha256').update('chain').digest('hex')
  const pictures = [{ file: '20300101-080000.jpg', sha256, taken: null, belongs: null }]
  laptop.told('move tank bolts to bench')
  other.told('move tank bolts to spare')
  other.session().send({ do: 'add-pictures', pictures })
  const folder = join(laptop.home, 'blue-twin')
  const asked = { errand: 'merge', path: copy, isTaken: true } as const
  const places = { home: laptop.home, cwd: laptop.home }
  const before = journalOf(laptop)
  let failed = 0
  for (let at = 1; ; at += 1) {
    rmSync(folder, { recursive: true })
    mkdirSync(folder)
    writeFileSync(join(folder, 'journal.log'), before)
    const fs = Object.assign(faultyFileSystem(), { linkSync })
    const session = new DiskShelf(laptop.home, { fs, lockLimit: 0 }).open(folder)
    fs.plant({ at, errno: 'EIO' })
    const outcome = await runMerge(asked, session, places, () => undefined, { fs })
    const isOver = fs.hit === null
    fs.mend()
    if (outcome.ok) expect(journalOf(laptop).startsWith(before)).toBe(true)
    else {
      failed += 1
      expect(outcome.exit).toBe('not-recorded')
      expect(journalOf(laptop)).toBe(before)
    }
    const again = await runMerge(asked, laptop.session(), places, () => undefined)
    expect(again).toMatchObject({ ok: true, entries: { length: outcome.ok ? 0 : 2 } })
    const { state } = laptop.session()
    expect([state.leftOut.size, state.pictures.size]).toEqual([1, 1])
    // A half copy that could not be removed is gone when the next one is made by another program.
    const copied = readdirSync(join(folder, 'photos')).filter((name) => !name.startsWith('.copy-'))
    expect(copied).toEqual(['20300101-080000.jpg'])
    if (isOver) break
  }
  expect(failed).toBeGreaterThan(15)
})

describe('what is no copy to be merged', () => {
  const one = (make: (copies: ReturnType<typeof twoCopies>) => string, says: string[]) => ({ make, says })
  const cases: Record<string, ReturnType<typeof one>> = {
    'the job itself': one(
      ({ laptop }) => join(laptop.home, 'blue-twin'),
      ['is this job itself.', 'Name the other copy.'],
    ),
    'its journal by another name': one(
      ({ laptop, other }) => {
        symlinkSync(join(laptop.home, 'blue-twin'), join(other.home, 'link'))
        return join(other.home, 'link', 'journal.log')
      },
      ['is this job itself.'],
    ),
    'another job': one(
      ({ other }) => {
        other.say('new', 'job', 'mower')
        return join(other.home, 'mower')
      },
      ['is another job, mower, and no copy of job 1, blue twin.', '"jobs" lists the jobs of this computer'],
    ),
    'nothing at all': one(
      ({ other }) => join(other.home, 'red-twin'),
      ['There is nothing at', 'say its path.'],
    ),
    'a folder without a journal': one(({ other }) => other.home, ['has no journal in it, so it is no job.']),
    'a damaged copy': one(
      ({ other, copy }) => {
        const journal = join(copy, 'journal.log')
        writeFileSync(journal, journalOf(other).replace('8', '9'))
        return copy
      },
      ['is damaged: its checksum does not agree.', '"putback doctor '],
    ),
    'a copy whose last line breaks a law, its checksum right': one(
      ({ other, copy }) => {
        writeFileSync(join(copy, 'journal.log'), withUnlawful(other))
        return copy
      },
      ['is damaged: it tells what cannot be', 'Nothing is merged;'],
    ),
    'a copy with such a line, and one behind it that has no end: the first is named': one(
      ({ other, copy }) => {
        writeFileSync(join(copy, 'journal.log'), `${withUnlawful(other)}{"v":2`)
        return copy
      },
      ['is damaged: it tells what cannot be', 'Nothing is merged;'],
    ),
    'a copy that is being written': one(
      ({ copy }) => {
        appendFileSync(join(copy, 'journal.log'), '{"v":2,"n":')
        return copy
      },
      ['has no end: it may be in the middle of being written.', 'Nothing is merged;'],
    ),
    'a copy whose journal is a link': one(
      ({ other, copy }) => {
        const folder = join(other.home, 'led-astray')
        mkdirSync(folder)
        symlinkSync(join(copy, 'journal.log'), join(folder, 'journal.log'))
        return folder
      },
      ['cannot be read or written:'],
    ),
  }

  function withUnlawful(other: ReturnType<typeof twoCopies>['other']) {
    const entries = journalOf(other)
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line.slice(9)))
    const { v, at } = entries[0]
    return fileOf([...entries, { v, n: entries.length + 1, at, id: 'unasked', type: 'cleared' }])
  }

  test.each(Object.entries(cases))('%s', async (_, { make, says }) => {
    const copies = twoCopies()
    copies.other.told('move tank bolts to bench')
    const path = make(copies)
    const before = journalOf(copies.laptop)
    const { code, err } = await copies.laptop.send('merge', path, 'take')
    expect(code).not.toBe(0)
    for (const each of says) expect(err.replace(/\s+/g, ' ')).toContain(each)
    expect(journalOf(copies.laptop)).toBe(before)
    expect(readdirSync(join(copies.laptop.home, 'blue-twin'))).toEqual(['journal.log'])
  })

  test('the way to a copy may lead through a link: somebody named it', async () => {
    const { laptop, other, copy } = twoCopies()
    other.told('move tank bolts to bench')
    symlinkSync(copy, join(other.home, 'link'))
    expect((await laptop.send('merge', join(other.home, 'link'))).code).toBe(0)
    expect(laptop.say('where tank bolts').out).toContain('2 on the bench')
  })

  test('a journal alone will do', async () => {
    const { laptop, other, copy } = twoCopies()
    other.told('move tank bolts to bench')
    cpSync(join(copy, 'journal.log'), join(other.home, 'from-the-bench.log'))
    expect((await laptop.send('merge', join(other.home, 'from-the-bench.log'))).code).toBe(0)
    expect(laptop.say('where tank bolts').out).toContain('2 on the bench')
  })
})
