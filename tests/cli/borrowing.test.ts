import { expect, test } from 'vitest'
import { bench } from './support/bench.ts'

/** Two jobs: 1, the red twin, has cover bolts in a bag; 2, the blue twin, lacks some, and is the one in hand. */
function twoJobs() {
  const made = bench()
  const inJob =
    (no: number) =>
    (...lines: string[]) => {
      for (const line of lines) {
        const { code, err } = made.say('--job', String(no), line)
        if (code !== 0) throw new Error(`${line}: ${err}`)
      }
    }
  made.say('new', 'job', 'red twin')
  made.told('begin cover off', 'off 6 M6x25 cover bolts', 'off 2 M6x16 guard bolts', 'end')
  made.say('new', 'job', 'blue twin')
  made.told('begin cover off', 'off 6 M6x25 cover bolts, 1 missing', 'end')
  return { ...made, inRed: inJob(1), red: (line: string) => made.say('--job', '1', line) }
}

test('both records say what was lent, and it goes back where it came from', async () => {
  const { send, say, red, inRed } = twoJobs()
  const { code, out } = await send('borrow 1 cover bolt from job 1')
  expect(code).toBe(0)
  expect(out).toContain('borrowed: 1 × cover bolt M6x25, onto the bench, from job 1, red twin')
  expect(out).toContain('in job 1, red twin: ')
  expect(out).toContain('lent to job 2, blue twin (b1): 1 × cover bolt M6x25')
  expect(say('where cover bolts').out).toContain('5 in bag 1 (002 0001 ')
  expect(say('where cover bolts').out).toContain('1 on the bench')

  // What is lent is missed where it came from, and nobody asks what was taken out of it.
  expect(red('take 1').err).toContain(
    '1 × cover bolt M6x25 is out, lent to job 2, blue twin (b1) since 1 Jan: once back, "came back b1".',
  )
  expect(red('due').out).toContain('lent to job 2, blue twin since 1 Jan')
  inRed('came back b1')
  expect(red('where cover bolts').out).toContain('5 in bag 1')
  expect(red('due').out).toContain('Nothing is to be checked, and nothing is awaited.')
})

test('with nothing said of its name here, the piece that takes it is named', async () => {
  const { send, say } = twoJobs()
  const { out } = await send('borrow 1 guard bolt from job 1 for cover bolts into bag 1')
  expect(out).toContain('borrowed: 1 × cover bolt M6x25, into bag 1, from job 1, red twin')
  expect(say('where cover bolts').out).toContain('6 in bag 1')
})

test.each<[string, string, string[]]>([
  ['of itself', 'borrow 1 cover bolt from job 2', ['Job 2, blue twin, is this job itself.']],
  ['of no job', 'borrow 1 cover bolt from job 7', ["There is no job '7'."]],
  [
    'more than there are',
    'borrow 7 cover bolts from job 1',
    ['In job 1, red twin: Cover bolts M6x25: bag 1 holds 6, 7 wanted: 1 short.'],
  ],
  [
    'what several answer to',
    'borrow 1 bolt from job 1 for cover bolts',
    [
      "In job 1, red twin, 2 pieces answer to 'bolt'.",
      'p1  cover bolts M6x25: in bag 1',
      'p2  guard bolts M6x16: in bag 1',
      '"borrow 1 p1 from job 1 for p1"',
    ],
  ],
  [
    'what nobody there knows',
    'borrow 1 flywheel from job 1 for cover bolts',
    ["In job 1, red twin, no piece is called 'flywheel'."],
  ],
])('%s: refused, and neither record says a word of it', async (_, line, words) => {
  const { send, red, session } = twoJobs()
  const before = [red('log').out, session().entries().length]
  const { code, err } = await send(line)
  expect(code).not.toBe(0)
  for (const each of words) expect(err).toContain(each)
  expect([red('log').out, session().entries().length]).toEqual(before)
})

test('what this job would not take is refused before the other is written to', async () => {
  const { send, red, told } = twoJobs()
  told('off cam caps I1..I2 into bench')
  const before = red('log').out
  const { code, err } = await send('borrow 1 cover bolt from job 1 for cam cap I1')
  expect(code).toBe(1)
  expect(err).toContain('Cam cap I1 has one home, and the record still has the old one on the bench')
  expect(red('log').out).toBe(before)
})

test('what is lent and surplus where it came from keeps nobody there from the first start', async () => {
  const { send, red, inRed } = twoJobs()
  inRed('leave off 1 cover bolt because one hole is plugged')
  await send('borrow 1 cover bolt from job 1')
  inRed('look 1', 'take 1', 'fit 5 cover bolts', 'fit guard bolts', 'done')
  expect(red('left').out).toMatch(/^Nothing is left over\. Next: clear\n/)
})

test('what is given back is said to be still in the record of who had it', async () => {
  const { send, red, told } = twoJobs()
  await send('borrow 1 cover bolt from job 1')
  expect(red('came back b1').out).toMatch(
    /The record of job 2, .* still has it: say there "send back PIECE because \.\.\."\./,
  )
  told('send back 1 cover bolts because given back to job 1')
})
