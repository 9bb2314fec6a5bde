import { execFileSync } from 'node:child_process'
import { mkdirSync, readFileSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { findStocks } from '../../src/print/stocks.ts'
import { benchWithJob } from '../cli/support/bench.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'

const a4Of24 = JSON.parse(readFileSync('labels/a4-24.json', 'utf8')) as object

/** A home whose folder of labels holds files of any content. */
function homeWith(files: Record<string, string>): { home: string; labels: string } {
  const home = join(temporaryFolder(), 'jobs')
  const labels = join(home, '..', 'labels')
  mkdirSync(labels, { recursive: true })
  for (const [name, text] of Object.entries(files)) writeFileSync(join(labels, name), text)
  return { home, labels }
}

const badIn = (home: string) =>
  findStocks(home).bad.map(({ path, why }) => [
    path.split(/[/\\]/).at(-1),
    typeof why === 'string' ? why : 'faults',
  ])

describe('files of stocks', () => {
  test('of any content are stocks or are named as none, and the program’s own stay', () => {
    const { home } = homeWith({
      'bin.json': '\x00\x01\xff',
      'constructor.json': JSON.stringify({ ...a4Of24, name: 'constructor' }),
      'deep.json': '['.repeat(40_000) + ']'.repeat(40_000),
      'empty.json': '',
      'keys.json': JSON.stringify(
        Object.fromEntries(Array.from({ length: 5000 }, (_, key) => [`k${key}`, key])),
      ),
      'null.json': 'null',
      'proto.json': '{"__proto__": {"name": "a4-24"}, "constructor": 1}',
      'endless.json': JSON.stringify({ ...a4Of24, name: 'endless' }).replace(
        '"columns":3',
        '"columns":1e999',
      ),
    })
    const own = findStocks(join(temporaryFolder(), 'jobs')).stocks
    const { stocks } = findStocks(home)
    expect([...stocks.keys()]).toEqual([...own.keys(), 'constructor'])
    expect(badIn(home)).toEqual([
      ['bin.json', 'not-json'],
      ['deep.json', 'faults'],
      ['empty.json', 'not-json'],
      ['endless.json', 'faults'],
      ['keys.json', 'faults'],
      ['null.json', 'faults'],
      ['proto.json', 'faults'],
    ])
  })

  test('with the mark that some editors put before a text are read', () => {
    const { home } = homeWith({ 'own.json': `\ufeff${JSON.stringify({ ...a4Of24, name: 'own' })}` })
    expect(findStocks(home).stocks.has('own')).toBe(true)
  })

  test('far too large are not read at all', () => {
    const { home, labels } = homeWith({ 'big.json': '{' })
    truncateSync(join(labels, 'big.json'), 4_000_000_000)
    expect(badIn(home)).toEqual([['big.json', 'too-large']])
  })

  test.skipIf(process.platform === 'win32')('that are none are passed over: folders, links, pipes', () => {
    const { home, labels } = homeWith({})
    mkdirSync(join(labels, 'folder.json'))
    symlinkSync('/dev/zero', join(labels, 'endless.json'))
    execFileSync('mkfifo', [join(labels, 'pipe.json')])
    expect(badIn(home)).toEqual([])
  })
})

test('what is wrong with a file is said in a line that steers nothing, and ends', () => {
  const on = benchWithJob()
  const labels = join(on.home, '..', 'labels')
  mkdirSync(labels)
  const keys = Array.from({ length: 5000 }, (_, key) => [`k${key}`, key])
  writeFileSync(join(labels, 'keys.json'), JSON.stringify(Object.fromEntries(keys)))
  writeFileSync(join(labels, 'steers.json'), JSON.stringify({ ...a4Of24, '\x1b[2J\u202ered': 1 }))
  writeFileSync(join(labels, 'null.json'), 'null')
  return on.send('labels stocks').then(({ code, out }) => {
    expect(code).toBe(0)
    const lines = out.split('\n')
    expect(lines.find((line) => line.startsWith('keys.json'))).toMatch(/name is missing; .*; and \d+ more\.$/)
    expect(lines).toContain('steers.json is passed over: [2Jred is not known.')
    expect(lines).toContain('null.json is passed over: the whole is not of the right kind.')
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThan(1000)
  })
})
