import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { Hands } from './support/hands.ts'
import { buildOnce, homeForTest, onFirstJob, PROGRAM } from './support/putback-terminal.ts'

beforeAll(buildOnce)

/** Linux lets a process be told how long a file may grow: writes beyond that are cut short by the system itself. */
const PRLIMIT = 'prlimit'
const hasPrlimit = process.platform === 'linux' && spawnSync(PRLIMIT, ['--version']).status === 0

const NOTE = 'note: the harness runs behind the bracket, and the clip at its end is broken'

describe.skipIf(!hasPrlimit)('a disk that takes no more', () => {
  test.each([
    ['only a part of a line', 60, 'Not recorded: the disk took only a part of it, and may be full.'],
    ['nothing', 0, 'Not recorded: the file is as large as this disk allows.'],
  ])(
    'takes %s: the screen says so and keeps the words, and Enter sends them when there is room',
    async (_, room, says) => {
      const { terminal, home } = await onFirstJob()
      const hands = new Hands(terminal)
      const journal = join(home, 'blue-twin', 'journal.log')
      await hands.record('off 4 cover bolts into bag', 2)
      const before = readFileSync(journal)

      limit(terminal.pid(), String(before.length + room))
      await hands.press(`${NOTE}\r`, () => hands.said().includes(says), says)
      expect(hands.said()).toMatch(/^! NOT RECORDED/)
      expect(hands.line()).toBe(NOTE)
      expect(readFileSync(journal)).toEqual(before)

      limit(terminal.pid(), 'unlimited')
      await hands.record('', 3)
      expect(hands.line()).toBe('')
      expect(readFileSync(journal, 'utf8').split('\n').at(-2)).toContain('the clip at its end is broken')
      expect(readdirSync(join(home, 'blue-twin')).filter((name) => name.includes('torn'))).toEqual([])
    },
  )

  test('the command line says so, ends with 3, and the same command goes through afterwards', () => {
    const home = homeForTest()
    const putback = [process.execPath, PROGRAM, '--home', home]
    run([...putback, 'new', 'job', 'blue twin'])
    const journal = join(home, 'blue-twin', 'journal.log')
    const before = readFileSync(journal)
    const full = run([PRLIMIT, `--fsize=${before.length + 60}`, ...putback, NOTE])
    expect([full.status, full.stdout]).toEqual([3, ''])
    expect(full.stderr).toContain('Not recorded: the disk took only a part of it, and may be full.')
    expect(full.stderr).toContain('Everything recorded before still stands.')
    expect(readFileSync(journal)).toEqual(before)
    expect(run([...putback, NOTE])).toMatchObject({ status: 0, stderr: '' })
    expect(statSync(journal).size).toBeGreaterThan(before.length)
  })
})

function limit(pid: number, bytes: string): void {
  const { status, stderr } = spawnSync(PRLIMIT, ['--pid', String(pid), `--fsize=${bytes}:`], {
    encoding: 'utf8',
  })
  if (status !== 0) throw new Error(stderr)
}

function run([command = '', ...args]: string[]) {
  return spawnSync(command, args, { encoding: 'utf8' })
}
