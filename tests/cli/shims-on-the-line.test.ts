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

test('what is ordered in another size says so, and arrives in it', () => {
  const { say, told } = benchWithJob()
  told('begin shims out', 'off shims E1..E2 into bench', 'size shims: E1 2.50, E2 2.50', 'end')
  told('scrap shim E2 because it leaves 0.31 mm', 'buy 1 shim E2 size 2.55 at 6.50 EUR due in 5 days')
  expect(say('to buy').out).toContain('o1  1 × shim E2 2.55: ')
  told('arrived shim E2')
  expect(say('where shim E2').out).toContain('shim 2.55 E2')
  expect(say('buy o1 size 2.55').err).toContain('size 2.55')
})

test('a missing limit is said in one line', () => {
  const { code, err } = benchWithJob().say('shims E1 0.26 2.50 wanted E 0.25')
  expect(code).toBe(2)
  expect(err).toContain("'E 0.25' is no range: both limits are needed, as the manual gives them.")
})

test('from the clearances in the record: found before the shims came off, and again when all is done', () => {
  const { say, told } = benchWithJob()
  told(
    'begin valve cover off',
    'measure valve clearance I1..I2: 0.14 0.15 feeler 0.01, limits 0.13..0.17',
    'measure valve clearance E1..E4: 0.26 0.21 0.31 0.28 feeler 0.01, limits 0.22..0.28',
    'begin buckets and shims out',
    'off shims I1..I2,E1..E4 into bench',
  )
  expect(say('shims').err).toContain('No shim of a known size at I1, I2, E1, E2 and 2 more.')
  told('size shims: I1 2.45, I2 2.40, E1 2.50, E2 2.50, E3 2.50, E4 2.475')
  const plan = () => JSON.parse(say('--json', 'shims for sale 2.30..3.00 step 0.025').out).answer.worked
  expect(say('shims for sale 2.55').out).toContain('2 of 6 out of range: 3 valves to touch, buy 1 × 2.55.\n')
  told(...plan().carryOut.lines)
  // The plan for what was found stands as it was, and there is nothing left to record of it.
  expect(plan()).toMatchObject({ plan: { buy: [{ size: 2.55 }] }, carryOut: { lines: [] } })

  told('measure valve clearance E1..E4: 0.26 0.24 0.26 0.26 feeler 0.01, limits 0.22..0.28')
  expect(say('shims').out).toContain('All 6 within their range: no shim moves.\n')
  expect(plan().plan.valves.map(({ fitted }: { fitted: number }) => fitted)).toEqual([
    2.45, 2.4, 2.5, 2.475, 2.55, 2.5,
  ])
})
