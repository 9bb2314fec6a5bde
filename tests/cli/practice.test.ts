import { expect, test } from 'vitest'
import { bench } from './support/bench.ts'

test('practice makes a job to learn with, and points at the screens', () => {
  const { say, session } = bench()
  const { code, out } = say('practice')
  expect(code).toBe(0)
  expect(out).toContain('job 1 made: practice pump, an invented hand pump')
  expect(out).toContain('putback opens the screens')
  expect(session().state.job).toMatchObject({ no: 1, practice: true })
  expect(say('new', 'job', 'mine').code).toBe(0)
  expect(session().state.job.practice).toBeUndefined()
})
