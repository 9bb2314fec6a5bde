import { expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

const asked = 'shims E1 0.26, E2 0.21, E3 0.31, E4 0.28 wanted E 0.22..0.28 for sale 2.30..3.00 step 0.025'

test('a plan on the command line, and its lines carried out', () => {
  const { say, told, session } = benchWithJob()
  told(
    'begin buckets and shims out',
    'off shims E1..E4 into bench',
    'size shims: E1 2.50, E2 2.50, E3 2.50, E4 2.475',
    'end',
  )
  const before = session().entries().length
  const { code, out } = say(asked)
  expect(code).toBe(0)
  expect(out).toContain('2 of 4 out of range: 3 valves to touch, buy 1 × 2.55.\n')
  expect(session().entries()).toHaveLength(before)

  const { answer } = JSON.parse(say('--json', asked).out)
  expect(answer).toMatchObject({
    sum: 'shims',
    worked: {
      plan: {
        work: [
          { work: 'exchange', positions: ['E2', 'E4'] },
          { work: 'pass-on', positions: ['E3'], last: { take: 'buy', size: 2.55 } },
        ],
        buy: [{ size: 2.55, count: 1 }],
      },
    },
  })
  told(...answer.worked.carryOut.lines)
  expect(say('where shim E2').out).toContain('shim 2.475 E2')
  expect(say('where shim E3').out).toContain('shim 2.55 E3')
})

test('a missing limit is said in one line', () => {
  const { code, err } = benchWithJob().say('shims E1 0.26 2.50 wanted E 0.25')
  expect(code).toBe(2)
  expect(err).toContain("'E 0.25' is no range: both limits are needed, as the manual gives them.")
})
