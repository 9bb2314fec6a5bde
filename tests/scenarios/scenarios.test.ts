import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { auditLedger } from '../../src/ledger/laws.ts'
import { stateText } from '../support/journal.ts'
import { workshop } from './workshop.ts'

// Whole jobs, told from outside as files of commands. Each ends with the job closed.
const jobs = [
  ...readdirSync(import.meta.dirname)
    .filter((name) => name.endsWith('.txt'))
    .map((name) => join(import.meta.dirname, name)),
  'jobs/demo/blue-twin.txt',
].map((path) => ({ name: path.replace(/^.*[\\/]/, ''), text: readFileSync(path, 'utf8') }))

describe('a whole job', () => {
  test.each(jobs)('$name runs as it is told, to its end', ({ name, text }) => {
    const { run, session } = workshop()
    expect(run(text, name)).toMatchObject({ failure: null })
    const { state } = session()
    expect(state.closed).toBe(true)
    expect(auditLedger(state.ledger)).toEqual([])
  })

  test.each(jobs)('$name read back from the disk is what it was when it was written', ({ name, text }) => {
    const { run, session, reopened } = workshop()
    run(text, name)
    expect(stateText(reopened().state)).toBe(stateText(session().state))
  })
})

describe('a job that is broken off at every line', () => {
  test.each(jobs)('$name, each line by a program of its own, comes to the same', ({ name, text }) => {
    const whole = workshop()
    whole.run(text, name)
    const broken = workshop()
    for (const line of text.split('\n')) expect(broken.newDesk().run(line, name).failure).toBeNull()
    expect(stateText(broken.reopened().state)).toBe(stateText(whole.session().state))
  })
})

describe('two who work in one job', () => {
  test.each(jobs)('$name, line by line in turn, comes to the same', ({ name, text }) => {
    const whole = workshop()
    whole.run(text, name)
    const shared = workshop()
    const desks = [shared, shared.newDesk()]
    for (const [index, line] of text.split('\n').entries()) {
      expect(desks[index % 2]?.run(line, name).failure).toBeNull()
    }
    expect(stateText(shared.reopened().state)).toBe(stateText(whole.session().state))
  })
})

test('the scenarios meet every refusal that a line can meet', () => {
  const codes = [...readFileSync('src/journal/refusal.ts', 'utf8').matchAll(/code: '([a-z-]+)'/g)].map(
    ([, code]) => code,
  )
  const met = new Set(
    jobs.flatMap(({ text }) => [...text.matchAll(/^refused ([a-z-]+):/gm)].map(([, code]) => code)),
  )
  expect(codes.length).toBeGreaterThan(60)
  expect(codes.filter((code) => !met.has(code))).toEqual([
    // No line makes a job where there is one, or is read where there is none: the command line sees to that.
    'no-job',
    'job-open-already',
    // A law is met under its own name.
    'law',
    // 8999 bags or 9999 steps.
    'numbers-used-up',
    // Numbers come onto labels by printing them, and pictures into the job by a folder of them: these scenarios do
    // neither. tests/cli/labels-and-pictures.test.ts does.
    'too-many-labels',
    'label-unused',
    'label-in-use',
    'slots-not-said',
    'picture-known',
    'picture-wrong',
    // Second locks: what is read from a line is whole already. tests/errors/ meets them.
    'passes-wrong',
    'measurement-wrong',
    // There is no second copy of these jobs to be merged. tests/errors/ meets it.
    'merge-stays',
  ])
  for (const law of ['not-its-position', 'position-not-said', 'home-full']) expect(met).toContain(law)
})
