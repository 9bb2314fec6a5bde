import {
  appendFileSync,
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { type Bench, bench } from './support/bench.ts'

/** A job on the laptop, and a copy of its folder that is gone on with at the bench. */
function twoCopies(...lines: string[]): { laptop: Bench; other: Bench; copy: string } {
  const laptop = bench()
  laptop.say('new', 'job', 'blue twin')
  laptop.told('begin seat off', 'off 8 M6x25 seat bolts', 'off 2 tank bolts into new bag', 'end', ...lines)
  const other = bench()
  const copy = join(other.home, 'blue-twin')
  cpSync(join(laptop.home, 'blue-twin'), copy, { recursive: true })
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
