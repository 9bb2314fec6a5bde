import { expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

// It is Tuesday, 1 January 2030.

test('nothing is due in a job in which nothing is asked', () => {
  const { say, told } = benchWithJob()
  told('begin seat off', 'off 2 seat bolts')
  expect(say('due').out).toBe('Nothing is to be checked, and nothing is awaited.\n')
})

test('all that is awaited, what is late first, each with what to type', () => {
  const { say, told, itIs } = benchWithJob()
  told(
    'begin cylinder head off',
    'off cylinder head into bench',
    'off 6 M10 head nuts, 1 missing',
    'off camshaft into bench',
    'end',
    'out cylinder head to Miller due 3 Jan',
    'check camshaft: look for score',
    'buy 1 head nuts from the corner shop due 4 Jan',
    'want 2 tubes grease',
  )
  itIs('2030-01-05')
  const { out } = say('due')
  const heads = out.split('\n').filter((row) => /^[A-Z ]+:$/.test(row))
  expect(heads).toEqual([
    'OVERDUE:',
    'TO BE CHECKED AND DECIDED:',
    'TO BUY AND ORDERED:',
    'MISSING OR BROKEN:',
  ])
  const rows = out.split('\n')
  expect(rows[1]).toBe('  OVERDUE b1, 1 × cylinder head at Miller, due 3 Jan, 2 days late')
  expect(rows).toContain('      "came back b1" when it is here')
  expect(rows.find((row) => row.startsWith('  o1 '))).toMatch(/head nuts.*, due 4 Jan, 1 day late/)
  expect(out).toContain('camshaft: NOT CHECKED')
  expect(rows).toContain('  1 line not ordered yet: "to buy" shows them')
  expect(out).toMatch(/head nuts M10: 1 short/)
  const { answer } = JSON.parse(say('--json', 'due').out)
  expect(answer.late.map((thing: object) => Object.keys(thing)[0])).toEqual(['outing', 'order'])
  expect(answer.missing).toMatchObject([{ piece: 'p2', short: 1 }])
  // The card says what is late as well.
  expect(say('card').out).toMatch(
    /\nOVERDUE b1, 1 × cylinder head at Miller, due 3 Jan, 2 days late\nOVERDUE o1, .*due 4 Jan, 1 day late/,
  )
})

test('a set of which the same is asked stands there once, with what to type for all of it', () => {
  const { say, told } = benchWithJob()
  told(
    'begin head off',
    'off cam caps I1..I3 into bench',
    'off camshaft into bench',
    'end',
    'check cam caps: look for score; clean',
    'check camshaft: look for score',
    'ok k1: none',
  )
  // The one of which something is said already stands by itself.
  expect(say('due').out.split('\n').slice(0, 9)).toEqual([
    'TO BE CHECKED AND DECIDED:',
    '  p1  cam cap I1: NOT CHECKED',
    '      ✓ k1  look for score: none',
    '      o k2  clean it',
    '  cam caps I2, I3: NOT CHECKED',
    '      o k3 and k5  look for score',
    '      o k4 and k6  clean it',
    '      "ok cam caps" when all are good',
    '  p4  camshaft: NOT CHECKED',
  ])
  told('ok cam caps')
  expect(say('due').out).not.toContain('cam cap')
})
