import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { bench } from './support/bench.ts'

const job = [
  'new job "Blue twin" --machine "parallel twin"',
  'begin valve cover off',
  'off 8 M6x1x25 valve cover bolts into new bag',
  'off valve cover into bench',
  'end',
]

/** A bench, and a way to run lines as a file. */
function withFiles() {
  const made = bench()
  return {
    ...made,
    run(lines: readonly string[], ...options: string[]) {
      const file = join(made.home, 'rebuild.txt')
      mkdirSync(made.home, { recursive: true })
      writeFileSync(file, lines.join('\n'))
      return made.say('run', file, ...options)
    },
  }
}

describe('a file of commands', () => {
  test('is carried out line by line, each as on the command line', () => {
    const { run, session } = withFiles()
    const said = run(['# the cover', '', ...job, '  # more', 'use "blue twin"', 'rename job Green twin'])
    expect(said).toMatchObject({ code: 0, err: '' })
    expect(said.out).toContain('7 lines done')
    expect(session().state).toMatchObject({ job: { name: 'Green twin', machine: 'parallel twin' } })
  })

  test('keeps a number sign that is part of a line', () => {
    const { run, session } = withFiles()
    run([...job, 'begin lid off', 'off 2 #10-32x1/2 lid screws'])
    expect([...session().state.ledger.accounts.values()].at(-1)?.piece.size).toContain('#10')
  })

  test('stops at the first line that is refused, and names it', () => {
    const { run, session } = withFiles()
    const said = run([...job, '', 'take 1', 'note: never reached'])
    expect(said.code).toBe(1)
    expect(said.err).toMatch(/rebuild\.txt:7: Step 1, valve cover, cannot start yet/)
    expect(session().state.notes).toEqual([])
  })

  test.each([
    ['a misreading', 'tkae 1', 2],
    ['an unknown job', 'use green', 4],
    ['an unknown option', 'jobs --nothing', 2],
  ])('stops at %s with its exit code', (_, line, code) => {
    const { run } = withFiles()
    expect(run([...job, line])).toMatchObject({ code, err: expect.stringContaining('rebuild.txt:6') })
  })

  test('goes on after a line that is refused as it says', () => {
    const { run } = withFiles()
    const said = run([
      ...job,
      'refused step-blocked: take 1',
      'refused unknown-word: tkae 1',
      'refused which-piece: fit cover',
      'refused no-such-job: use green',
      'refused not-within-reach: fit 9 valve cover bolts',
      'note: all of these were refused',
    ])
    expect(said).toMatchObject({ code: 0, err: '' })
    expect(said.out).toContain('6 lines done, 5 refused as they should be')
  })

  test('stops at a line that is done where it should be refused, or refused otherwise', () => {
    const { run } = withFiles()
    run(job)
    expect(run(['use 1', 'refused step-blocked: note: all well'])).toMatchObject({
      code: 1,
      err: expect.stringMatching(/rebuild\.txt:2: .*should be refused as step-blocked, but it was done/),
    })
    expect(run(['use 1', 'refused no-job: take 1'])).toMatchObject({
      code: 1,
      err: expect.stringContaining('refused as step-blocked'),
    })
  })

  test('stops before a section when asked', () => {
    const { run, session } = withFiles()
    const lines = [...job, '== Build-up', 'look 1', 'take 1', '== After', 'clear']
    expect(run(lines, '--until', 'Build-up').code).toBe(0)
    expect(session().state.steps.get(1)?.built).toBe('open')
    expect(run(lines.slice(5), '--until', 'after').code).toBe(0)
    expect(session().state.steps.get(1)?.built).toBe('underway')
  })

  test('does nothing when the section to stop before is not there', () => {
    const { run, session } = withFiles()
    run(job)
    const before = session().entries().length
    expect(run(['use 1', 'note: a', '== A', 'note: b'], '--until', 'Never')).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining("no section 'Never'"),
    })
    expect(session().entries()).toHaveLength(before)
  })

  test('cannot hold what only the command line does, and says how to do that', () => {
    const { run } = withFiles()
    run(job)
    expect(run(['demo --whole'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('Say "putback demo --whole" on the command line'),
    })
    expect(run(['run other.txt']).err).toContain('"putback run other.txt"')
  })

  test('may come from another system, with other line ends', () => {
    const { run } = withFiles()
    expect(run([job.join('\r\n')]).code).toBe(0)
  })

  test('that is not there is said in one line', () => {
    const { say } = bench()
    expect(say('run', 'nothing.txt')).toMatchObject({
      code: 2,
      err: expect.stringContaining("'nothing.txt' cannot be read: ENOENT"),
    })
    expect(say('run')).toMatchObject({ code: 2 })
  })

  test('with --json is one object, whatever came', () => {
    const { home, ask } = bench()
    writeFileSync(join(home, 'a.txt'), job.join('\n'))
    expect(ask('run', join(home, 'a.txt'))).toMatchObject({
      code: 0,
      json: { ok: true, answer: { done: 5, refused: 0 } },
    })
    writeFileSync(join(home, 'b.txt'), 'take 1')
    expect(ask('run', join(home, 'b.txt'))).toMatchObject({
      code: 1,
      json: { ok: false, refusal: { code: 'step-blocked' } },
    })
  })
})
