import { expect, test } from 'vitest'
import { noteBrokenOff } from '../../src/cli/broke-off.ts'
import { enterJob } from '../../src/storage/lock/presence.ts'
import { emptyHome, shelfIn, say as tell } from '../ui/support/bench.ts'
import { type Bench, benchWithJob } from './support/bench.ts'

const HEAD = [
  'begin head off, does not hide',
  'off 4 M8x45 head bolts into bench',
  'end',
  'tighten head bolts: 20 Nm, 40 Nm, 90 deg, oiled',
  'take 1',
  'fit head bolts',
]
const THIRD = ['turn', 'turn', 'turn']
const TORQUED = Array<string>(8).fill('turn')

/** Lines of the card. */
function card({ say }: Bench): string[] {
  return say('card').out.split('\n')
}

function stops({ session }: Bench): number {
  return session()
    .entries()
    .filter(({ type }) => type === 'stopped').length
}

test('who goes on right away goes on in the middle of the pass', () => {
  const bench = benchWithJob(...HEAD, ...THIRD)
  expect(card(bench)).toContainEqual(expect.stringMatching(/^Next: turn 4 .*3 of 4 through.*: turn 4$/))
  expect(stops(bench)).toBe(0)
})

test('days later a torque pass starts again at its first fastener, and the card says why', () => {
  const bench = benchWithJob(...HEAD, ...THIRD)
  bench.itIs('2030-03-02')
  const rows = card(bench)
  expect(rows).toContainEqual(expect.stringMatching(/^Work broke off .* in step 1, head$/))
  expect(rows).toContainEqual(
    expect.stringMatching(/^Next: turn 1 .*pass 1 of 3: 20 Nm, 0 of 4 through.*: turn 1$/),
  )
  expect(rows).toContain('Work stopped in the middle of the pass, so it starts again at its first fastener.')
  expect(stops(bench)).toBe(1)
  card(bench)
  expect(stops(bench)).toBe(1)
})

test('days later it is asked whether the next fastener of an angle pass was turned, before any is turned', () => {
  const bench = benchWithJob(...HEAD, ...TORQUED, 'turn')
  bench.itIs('2030-03-02')
  const turn = bench.say('turn')
  expect(turn.code).toBe(1)
  // What had to be noted first is said before what came of the line.
  expect(turn.out).toMatch(/^\d+ {2}work broke off in step 1, head\n$/)
  expect(turn.err).toMatch(/^Fastener 2 of t1 \(head: head bolts\) m/)
  expect(card(bench)).toContainEqual(
    expect.stringMatching(/^Next: say whether 2 was turned .*: turned t1 yes\|no because \.\.\.$/),
  )
})

test('where work stopped with a word, or no bolt was turned, nothing is noted days later', () => {
  for (const lines of [HEAD, [...HEAD, ...THIRD, 'stop: supper']]) {
    const bench = benchWithJob(...lines)
    const before = stops(bench)
    bench.itIs('2030-03-02')
    card(bench)
    expect(stops(bench)).toBe(before)
  }
})

test('an answer that may be kept as a file says nothing before it', () => {
  const bench = benchWithJob(...HEAD, ...THIRD)
  bench.itIs('2030-03-02')
  expect(bench.say('left').out).not.toMatch(/^\d+ {2}work broke off/)
  expect(stops(bench)).toBe(1)
})

test('while another program has the job open, somebody is at it', () => {
  const bench = benchWithJob(...HEAD, ...THIRD)
  const presence = enterJob(bench.shelf.chosen() ?? '')
  bench.itIs('2030-03-02')
  card(bench)
  presence.leave()
  expect(stops(bench)).toBe(0)
})

/** A job in the middle of its first pass, told at five past two, in a session of its own. */
function halfWay() {
  const shelf = shelfIn(emptyHome())
  const path = shelf.create({ name: 'blue twin', machine: '', units: 'metric' })
  tell(shelf.open(path), ...HEAD, ...THIRD)
  return shelf.open(path)
}

const at = (hour: number, minute: number) => new Date(2030, 0, 15, hour, minute)

test('half an hour is a pause, and no longer', () => {
  const meanwhile = { booted: at(7, 0), othersHere: false }
  expect(noteBrokenOff(halfWay(), { ...meanwhile, now: at(14, 35) })).toBe(null)
  expect(noteBrokenOff(halfWay(), { ...meanwhile, now: at(14, 36) })).toMatchObject({
    abrupt: true,
    note: '',
  })
  // A clock that was put back by hours tells as little of when it was.
  expect(noteBrokenOff(halfWay(), { ...meanwhile, now: at(9, 0) })).toMatchObject({ type: 'stopped' })
})

test('where the computer was started since, a minute is enough', () => {
  const meanwhile = { now: at(14, 6), othersHere: false }
  expect(noteBrokenOff(halfWay(), { ...meanwhile, booted: at(14, 4) })).toBe(null)
  expect(noteBrokenOff(halfWay(), { ...meanwhile, booted: at(14, 6) })).toMatchObject({ type: 'stopped' })
})
