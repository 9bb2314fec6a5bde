import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { heedsAfter } from '../../src/session/heeds.ts'
import { type Timer, timersOf, turningPoints } from '../../src/session/timers.ts'
import { consumableHeedText } from '../../src/words/consumables/heed-words.ts'
import { timerText } from '../../src/words/consumables/timer-words.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import { done, drain, endStrip, fill, off, override, putOn, reopen, strip } from '../support/commands.ts'
import { given } from '../support/journal.ts'
import { openJob } from '../support/record.ts'
import { sessionIn, tell } from './support/sessions.ts'

// Each command of a story takes a second, on 1 January 2030 from 8 h on; the seventh puts it on. The times are invented.
const pump = [strip('pump off'), drain('oil'), off(2, 'pump bolts'), endStrip]
const sealant: Command = {
  do: 'set-consumable',
  step: 1,
  kind: 'sealant',
  name: 'grey sealant',
  workMinutes: 5,
  cureMinutes: 60,
}
const applied: Command = { do: 'apply', consumable: 's1' }
const asked = [...pump, sealant]

/** What runs so many minutes after it was put on, in a few words and as it is told. */
function running(minutes: number, ...commands: Command[]): string[] {
  const { state } = given(...asked, ...commands)
  const clock = {
    at: new Date(Date.UTC(2030, 0, 1, 8, 0, 7) + minutes * 60_000).toISOString(),
    today: '2030-01-01',
  }
  const now = { ...state, clock }
  return timersOf(now).flatMap((timer) => [inShort(timer), timerText(now, timer)])
}

const inShort = ({ kind, minutesLeft, isOver }: Timer) => `${kind} ${minutesLeft}${isOver ? ' over' : ''}`

describe('what runs', () => {
  test.each<[string, number, Command[], string[]]>([
    ['nothing before it is on', 0, [], []],
    ['the working time', 1, [applied], ['work 4', 's1, grey sealant: put the joint together, 4 min to go']],
    ['its last minute', 4.5, [applied], ['work 1', 's1, grey sealant: put the joint together, 1 min to go']],
    [
      'it has run out',
      5,
      [applied],
      [
        'work 0 over',
        's1, grey sealant: its working time has run out, and the joint is not together: clean it off, then "applied s1" when it is on anew',
      ],
    ],
    [
      'it has run out with one bolt in',
      6,
      [applied, putOn('p1', undefined, 1)],
      [
        'work 0 over',
        's1, grey sealant: its working time has run out, and the joint is not together: "reopen 1 because ...", clean it off, then "applied s1" when it is on anew',
      ],
    ],
    [
      'it sets, counted from the last piece',
      40,
      [applied, putOn('p1')],
      ['set 21', 's1, grey sealant: sets, 21 min to go, then the first start'],
    ],
    ['it has set', 61, [applied, putOn('p1')], []],
    ['the step was taken apart', 1, [applied, putOn('p1'), reopen(1)], []],
    ['it was passed over', 1, [applied, override('s1', 'no more of it')], []],
    [
      'a clock that was set back shows no more than the whole time',
      -600,
      [applied],
      [
        'work 5',
        "s1, grey sealant: put the joint together, this computer's clock stands before the time when it was put on: set it right",
      ],
    ],
    [
      'and so while it sets',
      -600,
      [applied, putOn('p1')],
      [
        'set 60',
        "s1, grey sealant: sets, this computer's clock stands before the time when it was put on: set it right, then the first start",
      ],
    ],
  ])('%s', (_, minutes, commands, expected) => {
    expect(running(minutes, ...commands)).toEqual(expected)
  })

  test('several, the working times first', () => {
    const locker: Command = { do: 'set-consumable', step: 1, kind: 'locker', name: 'locker', workMinutes: 20 }
    const lever = [strip('lever off', { after: [] }), off(1, 'lever bolt'), endStrip]
    const told = [...lever, { ...sealant, step: 2, name: 'black sealant' } as Command, locker]
    const on: Command[] = [
      { do: 'apply', consumable: 's2' },
      putOn('p2'),
      applied,
      { do: 'apply', consumable: 's3' },
    ]
    expect(running(1, ...told, ...on).filter((_, index) => index % 2 === 0)).toEqual([
      'work 5',
      'work 20',
      'set 60',
    ])
  })
})

describe('nothing but time goes by', () => {
  test('the gates follow, in a session that goes on and in one that comes back', () => {
    const folder = temporaryFolder()
    let now = Date.UTC(2030, 0, 1, 8)
    const open = () => sessionIn(folder, { now: () => new Date(now) })
    const first = tell(open(), openJob, ...asked, applied, putOn('p1'), fill('f1'), done(1))
    const clears = (session: typeof first) => session.foresee({ do: 'clear' }).ok
    expect([clears(first), clears(open())]).toEqual([false, false])
    now += 59 * 60_000
    expect([clears(first), clears(open())]).toEqual([false, false])
    const before = first.gates()
    now += 30_000
    expect(first.gates()).toBe(before)
    now += 30_000
    expect(first.gates()).not.toBe(before)
    expect([clears(first), clears(open())]).toEqual([true, true])
    now -= 3600_000
    expect([clears(first), clears(open())]).toEqual([false, false])
  })

  test('the points in time at which something runs out', () => {
    const { state } = given(...asked, applied, putOn('p1'))
    expect(turningPoints(state)).toEqual(['2030-01-01T08:05:07.000Z', '2030-01-01T09:00:08.000Z'])
  })
})

describe('a piece is fitted', () => {
  const heeds = (...commands: Command[]) => {
    const { state, entries } = given(...asked, ...commands)
    const last = entries.at(-1)
    const found = last ? heedsAfter(state, last) : []
    return found.flatMap((heed) =>
      heed.heed === 'not-put-on' || heed.heed === 'fitted-late' ? consumableHeedText(state, heed) : [],
    )
  }

  test('before it is on: said once', () => {
    expect(heeds(putOn('p1', undefined, 1))).toEqual([
      's1, grey sealant, is not on as far as the record knows: "applied s1" if it is.',
    ])
    expect(heeds(putOn('p1', undefined, 1), putOn('p1'))).toEqual([])
  })

  test('after its working time', () => {
    const quick: Command = { ...sealant, workMinutes: 0.02 } as Command
    const waits = Array.from({ length: 3 }, (): Command => ({ do: 'note', kind: 'note', text: 'the phone' }))
    const { state, entries } = given(...pump, quick, applied, ...waits, putOn('p1'))
    const last = entries.at(-1)
    expect(last && heedsAfter(state, last)).toMatchObject([
      { heed: 'fitted-late', consumable: 's1', late: 1 },
    ])
  })
})
