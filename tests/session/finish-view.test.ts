import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { finishView } from '../../src/session/finish-view.ts'
import type { Session } from '../../src/session/session.ts'
import { finishParts } from '../../src/words/finish-text.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import { at, done, endStrip, off, override, putOn, reopen, strip } from '../support/commands.ts'
import { openJob } from '../support/record.ts'
import { sessionIn, tell } from './support/sessions.ts'

// Noon of 1 January 2030, where the user is. Every command is given then.
const noon = new Date(2030, 0, 1, 12)
const DAY = 24 * 60

function jobAt(now: () => Date, ...commands: Command[]): Session {
  return tell(sessionIn(temporaryFolder(), { now }), openJob, ...commands)
}
const job = (...commands: Command[]) => jobAt(() => noon, ...commands)

const minutes = (step: number, time: number): Command => ({ do: 'change-step', step, minutes: time })
const took = (step: number, time: number): Command => ({
  do: 'note',
  kind: 'minutes',
  text: `${time} min`,
  minutes: time,
  step,
})
const sentOut = (piece: `p${number}`, due?: string): Command => ({
  do: 'send-out',
  to: 'machine shop',
  pieces: [{ piece }],
  due,
})

// The guard came off first and goes on last; beneath it the lever, and beside that the pump.
const three = [
  strip('guard off'),
  off(2, 'guard bolts'),
  strip('lever off', { after: [1] }),
  off(1, 'lever bolt'),
  strip('pump off', { after: [1] }),
  off(3, 'pump bolts'),
  endStrip,
]
const timed = [...three, minutes(1, 20), minutes(2, 30), minutes(3, 45)]

describe('the way to the finish', () => {
  test.each<[string, Command[], number, (number | string)[][], number]>([
    ['nothing came off', [], 0, [], 0],
    [
      'nobody said how long anything takes',
      three,
      0,
      [
        [3, 1],
        [2, 1],
      ],
      0,
    ],
    ['the longer of two that lie beneath', timed, 65, [[3, 1]], 95],
    [
      'they take the same',
      [...timed, minutes(2, 45)],
      65,
      [
        [3, 1],
        [2, 1],
      ],
      110,
    ],
    ['what is done counts no more', [...timed, putOn('p3'), done(3)], 50, [[2, 1]], 50],
    ['what is under way counts in full', [...timed, putOn('p3')], 65, [[3, 1]], 95],
    ['what was reopened counts anew', [...timed, putOn('p3'), done(3), reopen(3)], 65, [[3, 1]], 95],
    [
      'what it took to come off stands in',
      [...three, took(3, 10), took(3, 5), minutes(1, 20)],
      35,
      [[3, 1]],
      35,
    ],
    ['the word for the way back goes before it', [...three, took(3, 10), minutes(3, 60)], 60, [[3, 1]], 60],
    [
      'the order was passed over, so nothing waits for the pump',
      [...timed, override('start 1', 'it can be reached')],
      45,
      [[3]],
      95,
    ],
    // From noon to the start of 3 January.
    [
      'a part comes back in time for the start of a day',
      [...timed, sentOut('p2', '2030-01-03')],
      36 * 60 + 50,
      [[2, 1]],
      95,
    ],
    ['a part is due today', [...timed, sentOut('p2', '2030-01-01')], 65, [[3, 1]], 95],
    ['a part is out, and nobody said until when', [...timed, sentOut('p2')], 65, [[3, 1]], 95],
  ])('%s', (_, commands, finish, chains, hands) => {
    const view = finishView(job(...commands))
    expect(view.schedule).toMatchObject({ finish, chains, moreChains: false })
    expect(view.hands).toBe(hands)
  })

  const sealant = (more: object): Command => ({
    do: 'set-consumable',
    step: 3,
    kind: 'sealant',
    name: 'grey sealant',
    cureMinutes: DAY,
    ...more,
  })
  const applied: Command = { do: 'apply', consumable: 's1' }

  test.each<[string, Command[], number, (number | string)[]]>([
    ['sealant sets before the start', [sealant({})], 45 + DAY, [3, 's1']],
    ['sealant sets before the guard', [sealant({ before: [1] })], 45 + DAY + 20, [3, 's1', 1]],
    [
      'it is together, and sets',
      [sealant({ before: [1] }), applied, putOn('p3'), done(3)],
      DAY + 20,
      ['s1', 1],
    ],
    ['it is on, and not together', [sealant({ before: [1] }), applied], 45 + DAY + 20, [3, 's1', 1]],
    ['it is passed over', [sealant({}), override('s1', 'no need')], 65, [3, 1]],
    ['it holds up nothing', [sealant({ before: [] })], 65, [3, 1]],
  ])('%s', (_, commands, finish, chain) => {
    expect(finishView(job(...timed, ...commands)).schedule).toMatchObject({ finish, chains: [chain] })
  })

  test('as time goes by, what sets comes nearer, and a part that is late is not counted any more', () => {
    let now = noon
    const session = jobAt(
      () => now,
      ...timed,
      sealant({ before: [1] }),
      applied,
      putOn('p3'),
      done(3),
      sentOut('p2', '2030-01-03'),
    )
    expect(finishView(session).schedule?.finish).toBe(36 * 60 + 50)
    now = new Date(2030, 0, 2, 11)
    expect(finishView(session).schedule?.finish).toBe(13 * 60 + 50)
    now = new Date(2030, 0, 4, 12)
    const view = finishView(session)
    expect(view.schedule?.finish).toBe(50)
    expect(view.steps.find(({ step }) => step === 2)?.waits).toEqual([
      { piece: 'p2', by: 'b1', due: '2030-01-03', isLate: true },
    ])
  })
})

describe('what can be done meanwhile', () => {
  const free = (...commands: Command[]) => {
    const { ready, free } = finishView(job(...timed, ...commands))
    return { ready, free }
  }

  test.each<[string, Command[], number[], number[]]>([
    ['all is here', [], [3, 2], [1]],
    ['a bolt is out: all but its step and what lies on it', [sentOut('p2')], [3], []],
    ['what is under way goes on', [putOn('p3', undefined, 1)], [3, 2], [1]],
    [
      'what is scrapped and not ordered is away as well',
      [{ do: 'move', piece: 'p3', into: at('scrap') }],
      [2],
      [],
    ],
  ])('%s', (_, commands, ready, after) => {
    expect(free(...commands)).toEqual({ ready, free: after })
  })

  test('what waits is told with where it comes from', () => {
    const scrapped: Command = { do: 'move', piece: 'p3', into: at('scrap') }
    const ordered: Command = {
      do: 'line-orders',
      ordered: true,
      lines: [{ piece: 'p3', name: 'pump bolts', count: 3, due: '2030-01-04' }],
    }
    const waits = (...commands: Command[]) =>
      finishView(job(...timed, ...commands)).steps.flatMap((step) => step.waits)
    expect(waits(scrapped)).toEqual([{ piece: 'p3', by: null, due: undefined, isLate: false }])
    expect(waits(scrapped, ordered)).toEqual([{ piece: 'p3', by: 'o1', due: '2030-01-04', isLate: false }])
  })
})

describe('in words', () => {
  const told = (...commands: Command[]) => {
    const session = job(...commands)
    const when = (moment: string) => `at minute ${(Date.parse(moment) - noon.getTime()) / 60_000}`
    return finishParts(session.stateNow(), finishView(session), when).flatMap(({ heading, lines }) => [
      ...(heading === '' ? [] : [heading]),
      ...lines,
    ])
  }

  test('nothing to do', () => {
    expect(told()).toEqual(['Nothing has come off yet.'])
    expect(told(...three.slice(0, 2), endStrip, putOn('p1'), done(1))).toEqual([
      'Nothing is left to do before the first start.',
    ])
  })

  test('a part is out, a time is not said', () => {
    expect(told(...three, minutes(3, 45), took(2, 30), sentOut('p2', '2030-01-03'))).toEqual([
      'ESTIMATE, from the times and days that were said. Nothing waits for it.',
      'Together at minute 2190 at the earliest, in 36 h 30 min.',
      '1 h 15 min of work for one pair of hands, 3 steps to do.',
      'WHY NOT EARLIER',
      '36 h until what it needs is here, then step 2, lever, 30 min, then step 1, guard',
      'WAITS FOR WHAT IS NOT HERE',
      'step 2, lever: 1 × lever bolt, at machine shop (b1), due 3 Jan',
      'CAN START NOW',
      'step 3, pump, 45 min',
      'NO TIME SAID, COUNTED AS NOTHING',
      'step 1, guard',
      '"step 1 minutes 90" says how long one takes',
    ])
  })

  test('a part is late, sealant sets, a step is under way', () => {
    let now = noon
    const cures: Command = {
      do: 'set-consumable',
      step: 3,
      kind: 'sealant',
      name: 'grey sealant',
      cureMinutes: DAY,
      before: ['start'],
    }
    const out = sentOut('p2', '2030-01-02')
    const session = jobAt(() => now, ...timed, out, cures, putOn('p3', undefined, 1))
    now = new Date(2030, 0, 4, 12)
    expect(
      finishParts(session.stateNow(), finishView(session), () => 'then').flatMap(({ lines }) => lines),
    ).toEqual([
      'ESTIMATE, from the times and days that were said. Nothing waits for it.',
      'Together then at the earliest, in 24 h 45 min.',
      '1 h 35 min of work for one pair of hands, 3 steps to do.',
      'Not counted, for it is late or without a day: 1 × lever bolt.',
      'step 3, pump, 45 min, then s1, grey sealant, sets 24 h',
      'step 2, lever: 1 × lever bolt, at machine shop (b1), due 2 Jan, 2 days late',
      'step 3, pump, under way, 45 min',
    ])
  })
})
