import { appendFileSync, cpSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
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
    expect([code, out]).toEqual([0, expect.stringContaining(`merged with the copy ${copy}: 2 entries taken over\n`)])
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
