import { closeSync, existsSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type BuiltProgram, buildPutback } from './support/built-program.ts'

let program: BuiltProgram
const home = mkdtempSync(join(tmpdir(), 'putback-main-'))
const env = { PUTBACK_HOME: home }

beforeAll(async () => {
  program = await buildPutback()
})
afterAll(() => {
  program.remove()
  rmSync(home, { recursive: true, force: true })
})

test('--help answers with examples first, and the exit codes', () => {
  const { status, stdout, stderr } = program.run(['--help'])
  expect([status, stderr]).toEqual([0, ''])
  expect(stdout.indexOf('Examples:')).toBeLessThan(stdout.indexOf('Options:'))
  expect(stdout).toContain('1 refused, 2 not understood')
  expect(stdout.split('\n').every((line) => line.length <= 80)).toBe(true)
})

test('--version is the version of the package', () => {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8'))
  expect(program.run(['--version'])).toEqual({ status: 0, stdout: `${version}\n`, stderr: '' })
})

test('help and version load nothing but the entry; the screens alone load Ink, and neither loads the other', () => {
  const { outputs } = program.metafile
  const entry = Object.keys(outputs).find((path) => /\/putback\.mjs$/.test(path)) ?? ''
  const atOnce = reachedFrom(entry, outputs, ['import-statement'])
  expect(atOnce.filter((path) => /zod|ink|react|src\/(?!cli\/)/.test(path))).toEqual([])
  const cli = Object.keys(outputs).find((path) => /\/cli-\w+\.mjs$/.test(path)) ?? ''
  const forCommands = reachedFrom(cli, outputs, ['import-statement'])
  expect(forCommands.some((path) => path.includes('node_modules/zod/'))).toBe(true)
  expect(forCommands.filter((path) => /node_modules\/(?:ink|react|yoga-layout)\//.test(path))).toEqual([])
})

test('without a terminal the screens say so in one line', () => {
  const { status, stdout, stderr } = program.run([], { env })
  expect([status, stdout]).toEqual([2, ''])
  expect(stderr).toMatch(/^The screens need a terminal\. [^\n]*putback help[^\n]*\n$/)
})

test.each([['--jobb'], ['scan', '--job']])('a wrong option is one line: %s', (...args) => {
  const { status, stdout, stderr } = program.run(args, { env })
  expect([status, stdout]).toEqual([2, ''])
  expect(stderr).toMatch(/^[^\n]+\n$/)
})

test.each([['--jobb'], []])('and with --json one object: %s', (...args) => {
  const { status, stdout, stderr } = program.run(['--json', ...args], { env })
  expect([status, stderr]).toEqual([2, ''])
  expect(JSON.parse(stdout)).toMatchObject({ ok: false, text: expect.any(String) })
})

describe('a job in runs of its own', () => {
  const say = (...args: string[]) => program.run(args, { env })

  test('is made, filled, asked about and refused, with the exit code of each', () => {
    expect(say('new', 'job', 'Blue twin')).toMatchObject({ status: 0, stderr: '' })
    expect(say('begin', 'valve', 'cover', 'off').status).toBe(0)
    expect(say('off 8 M6x1x25 valve cover bolts; valve cover').status).toBe(0)
    expect(say('end').status).toBe(0)
    expect(say('take', '1')).toMatchObject({
      status: 1,
      stdout: '',
      stderr: expect.stringContaining('"look 1"'),
    })
    expect(say('tkae', '1').status).toBe(2)
    expect(say('--job', 'green', 'card').status).toBe(4)
    expect(say('1').stdout).toContain('NOT YET')
  })

  test('answers a refusal in JSON on standard output alone', () => {
    const { status, stdout, stderr } = say('--json', 'take', '1')
    expect([status, stderr]).toEqual([1, ''])
    expect(JSON.parse(stdout)).toMatchObject({ ok: false, refusal: { code: 'step-blocked' } })
  })

  test('takes lines from standard input', () => {
    const lines = 'refused step-blocked: take 1\nlook 1\ntake 1\n'
    const { status, stdout } = program.run(['run', '-'], { env, input: lines })
    expect(status).toBe(0)
    expect(stdout).toContain('standard input: 2 lines done, 1 refused as they should be')
  })
})

test.skipIf(!existsSync('/dev/full'))(
  'a disk that takes no answer is told in words, whatever was recorded',
  () => {
    const full = openSync('/dev/full', 'w')
    try {
      expect(program.run(['new', 'job', 'answered to a full disk'], { env, stdout: full })).toMatchObject({
        status: 5,
        stderr: [
          'The answer could not be written to its end: there the disk is full.',
          'What was recorded is recorded: "putback log" shows it, and other questions can be asked again.',
          '',
        ].join('\n'),
      })
      expect(program.run(['card'], { env, stdout: full, stderr: full }).status).toBe(5)
      const told = program.run(['--json', 'card'], { env, stdout: full })
      expect(told.status).toBe(5)
      expect(JSON.parse(told.stderr)).toMatchObject({ ok: false, code: 'not-told' })
      // What was not done is not told as done.
      expect(program.run(['--json', 'take', '9'], { env, stdout: full }).status).toBe(1)
      expect(program.run(['card'], { env }).stdout).toContain('answered to a full disk')
    } finally {
      closeSync(full)
    }
  },
)

/** The sources in a chunk and in all that it loads in these ways. */
function reachedFrom(from: string, outputs: BuiltProgram['metafile']['outputs'], kinds: string[]): string[] {
  const seen = new Set<string>()
  const open = [from]
  for (let path = open.pop(); path !== undefined; path = open.pop()) {
    if (seen.has(path)) continue
    seen.add(path)
    for (const { path: next, kind } of outputs[path]?.imports ?? []) if (kinds.includes(kind)) open.push(next)
  }
  return [...seen].flatMap((path) => Object.keys(outputs[path]?.inputs ?? {}))
}
