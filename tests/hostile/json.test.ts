import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { findStocks } from '../../src/print/stocks.ts'
import { usualHow } from '../../src/print/usual.ts'
import { chainedCrc } from '../../src/storage/journal/line.ts'
import { soundWanted } from '../../src/storage/sound-setting.ts'
import { benchWithJob } from '../cli/support/bench.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'

const HEAD = '"v":1,"n":2,"at":"2030-01-01T08:00:00.000Z","id":"x","type":"noted"'
const NOTE = `${HEAD},"step":null,"kind":"note"`
const DEEP = 100_000

/** JSON as RFC 8259 allows it and no program of ours writes it, and what is wrong with it. */
const TRICKS: [what: string, json: string, why: string][] = [
  ['a nature of its own', `{${NOTE},"text":"x","__proto__":{"isAdmin":true}}`, 'json'],
  ['the same, escaped', `{${NOTE},"text":"x","\\u005f_proto__":{"isAdmin":true}}`, 'json'],
  ['the same within', `{${NOTE},"text":{"__proto__":{"isAdmin":true}}}`, 'json'],
  ['a maker of its own', `{${NOTE},"text":"x","constructor":{"prototype":{"isAdmin":true}}}`, 'shape'],
  ['a type that every object has', `{${NOTE.replace('noted', 'constructor')},"text":"x"}`, 'shape'],
  ['a type that is a list', `{${NOTE.replace('"noted"', '["noted"]')},"text":"x"}`, 'shape'],
  ['another number behind the first', `{${NOTE},"text":"x","n":3}`, 'sequence'],
  ['lists in lists', '['.repeat(DEEP) + ']'.repeat(DEEP), 'shape'],
  ['lists in lists in a text', `{${NOTE},"text":${'['.repeat(DEEP)}${']'.repeat(DEEP)}}`, 'shape'],
  ['a nature far inside', `{${NOTE},"text":${'['.repeat(DEEP)}{"__proto__":1}${']'.repeat(DEEP)}}`, 'json'],
  ['brackets without an end', '{"a":'.repeat(DEEP), 'json'],
  ['a number beyond all', `{${NOTE.replace('"n":2', '"n":1e999')},"text":"x"}`, 'shape'],
  ['nothing, with a sign', `{${NOTE.replace('"n":2', '"n":-0')},"text":"x"}`, 'shape'],
  [
    'a count beyond all',
    `{${HEAD.replace('noted', 'filled')},"fluid":"f1","litres":1e999,"typed":"x"}`,
    'shape',
  ],
  ['a text beyond all', `{${NOTE},"text":"${'x'.repeat(900_000)}"}`, 'shape'],
  ['a version beyond all', `{${NOTE.replace('"v":1', '"v":1e300')},"text":"x"}`, 'shape'],
  ['a list', '[]', 'shape'],
  ['nothing', 'null', 'shape'],
  ['a mark of its encoding', `\ufeff{${NOTE},"text":"x"}`, 'json'],
  ['a zero byte', `{${NOTE},"text":"x"}\0`, 'json'],
]

describe('a line of a journal, its checksum right, that holds', () => {
  test.each(TRICKS)('%s is told as damage, and what stands before it stays', async (_, json, why) => {
    const on = benchWithJob()
    const path = join(on.home, 'blue-twin', 'journal.log')
    const before = readFileSync(path, 'utf8')
    const bytes = Buffer.from(json)
    writeFileSync(path, `${before}${chainedCrc(before.slice(0, 8), bytes)} ${json}\n`)
    const session = on.session()
    expect(session.entries()).toHaveLength(1)
    expect(session.problem).toMatchObject({ kind: 'damaged', line: 2, why })
    const { code, err } = on.say('note: y')
    expect(code).toBe(3)
    expect(err).toContain('Not recorded: ')
    expect(err.length).toBeLessThan(2000)
    expect(on.say('jobs').code).toBe(0)
    const doctor = await on.send('doctor')
    expect(doctor.out + doctor.err).toContain('line 2')
    expect(doctor.out.length).toBeLessThan(20_000)
    expect('isAdmin' in {}).toBe(false)
  })
})

test('the same as stocks and as settings is refused, or says nothing', () => {
  const home = temporaryFolder()
  mkdirSync(join(home, 'labels'))
  for (const [what, json] of TRICKS) {
    writeFileSync(join(home, 'labels', 'mine.json'), json)
    for (const name of ['.printing.json', '.settings.json']) writeFileSync(join(home, name), json)
    expect(findStocks(home).bad, what).toHaveLength(1)
    expect(usualHow(home), what).toEqual({})
    expect(soundWanted(home), what).toBe(true)
  }
  expect('isAdmin' in {}).toBe(false)
})
