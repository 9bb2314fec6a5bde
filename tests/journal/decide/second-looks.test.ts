import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { decide } from '../../../src/journal/decide/decide.ts'
import type { Entry } from '../../../src/journal/entry.ts'
import { fold } from '../../../src/journal/fold.ts'
import { Gates } from '../../../src/plan/gates.ts'
import { leftovers } from '../../../src/plan/leftovers.ts'
import { minutesToWait } from '../../../src/plan/waiting/second-looks.ts'
import {
  confirm,
  done,
  endStrip,
  look,
  mark,
  off,
  override,
  putOn,
  snug,
  strip,
  tightening,
  turn,
} from '../../support/commands.ts'
import { numbered, openJob } from '../../support/record.ts'

/** What is done, minutes after the beginning and by whom. */
type Act = readonly [minute: number, by: string, command: Command]

const moment = (minute: number) => new Date(Date.UTC(2030, 0, 1, 8, minute)).toISOString()
const clockAt = (minute: number, by = '') => ({
  at: moment(minute),
  today: '2030-01-01',
  ...(by !== '' && { by }),
})

/** A job told by acts, each at its minute. Throws with what is refused. */
function told(...acts: Act[]) {
  const entries: Entry[] = []
  for (const [minute, by, command] of [[0, '', openJob] as Act, ...acts]) {
    const decision = decide(fold(entries), command, clockAt(minute, by))
    if (!decision.ok) throw new Error(JSON.stringify(decision.refusal))
    const entry = numbered(decision.body, entries.length + 1)
    entries.push({ ...entry, at: moment(minute), ...(by !== '' && { by }) })
  }
  return fold(entries)
}

const apart: Act[] = (
  [
    strip('cover off', { hides: true }),
    off(1, 'cover'),
    strip('gear off'),
    off(2, 'gear bolts'),
    mark('dot up'),
    endStrip,
  ] as Command[]
).map((command) => [0, '', command] as const)

/** Step 2 is done at minute 10 by those who are named, one after the other. */
function geared(...by: string[]): Act[] {
  const work: Command[] = [tightening('p2', [snug]), putOn('p2'), turn(), turn(), confirm('m1'), done(2)]
  return work.map((command, index) => [4 + index, by[index % by.length] ?? '', command] as const)
}
const critical: Act = [11, '', { do: 'change-step', step: 2, critical: { afterMinutes: 30 } }]
const seen = (line: 'p2' | 'm1' | 't1', minute: number, by = ''): Act => [
  minute,
  by,
  { do: 'see-again', line, says: 'stripes in line' },
]
const secondsDue = (state: ReturnType<typeof told>) =>
  leftovers(new Gates(state)).flatMap((each) => (each.code === 'second-due' ? [each.line] : []))

describe('a critical step that is done', () => {
  const state = told(...apart, ...geared('Anna'), critical)

  test('is to be seen a second time, line by line, before what rests on it', () => {
    expect(secondsDue(state)).toEqual(['p2', 'm1', 't1'])
    expect(new Gates(state).start(1).map(({ code }) => code)).toEqual([
      'second-due',
      'second-due',
      'second-due',
      'look-due',
    ])
  })

  test('is seen by somebody else at once, and lets go when every line was seen', () => {
    const all = told(
      ...apart,
      ...geared('Anna'),
      critical,
      seen('p2', 11, 'Ben'),
      seen('m1', 11, 'Ben'),
      seen('t1', 11, 'Ben'),
    )
    expect(secondsDue(all)).toEqual([])
    expect(all.secondLooks.get(2)?.map(({ line, by }) => [line, by])).toEqual([
      ['p2', 'Ben'],
      ['m1', 'Ben'],
      ['t1', 'Ben'],
    ])
    expect(new Gates(all).start(1).map(({ code }) => code)).toEqual(['look-due'])
  })

  test('is to be seen anew when it was opened again', () => {
    const again = told(
      ...apart,
      ...geared('Anna'),
      critical,
      seen('m1', 11, 'Ben'),
      [12, 'Anna', { do: 'reopen', steps: [2], reason: 'it leaks' }],
      [13, 'Anna', putOn('p2')],
      [13, 'Anna', turn()],
      [13, 'Anna', turn()],
      [13, 'Anna', confirm('m1')],
      [13, 'Anna', done(2)],
    )
    expect(secondsDue(again)).toEqual(['p2', 'm1', 't1'])
  })

  test('no more when it is no longer critical, or the check of the step is overridden', () => {
    expect(
      secondsDue(
        told(...apart, ...geared('Anna'), critical, [12, '', { do: 'change-step', step: 2, critical: null }]),
      ),
    ).toEqual([])
    expect(secondsDue(told(...apart, ...geared('Anna')))).toEqual([])
  })
})

describe('who may look, and when', () => {
  test.each<[string, string[], number, string, number]>([
    ['somebody else, at once', ['Anna'], 11, 'Ben', 0],
    ['the same, at once', ['Anna'], 11, 'Anna', 28],
    ['the same in other letters', ['Anna'], 11, ' anna ', 28],
    ['one of two who worked in it', ['Anna', 'Ben'], 11, 'Ben', 28],
    ['a third one', ['Anna', 'Ben'], 11, 'Cleo', 0],
    ['the same, a minute too early', ['Anna'], 38, 'Anna', 1],
    ['the same, in time', ['Anna'], 39, 'Anna', 0],
    ['nobody by name, after nobody by name', [''], 11, '', 28],
    ['nobody by name, in time', [''], 39, '', 0],
    ['nobody by name, who may be Anna', ['Anna'], 11, '', 28],
    ['one who has a name, after nobody by name', [''], 11, 'Ben', 0],
    // Work was last done at minute 9; a clock that was set back never makes it earlier.
    ['the same, by a clock that was set back', ['Anna'], 0, 'Anna', 39],
  ])('%s', (_, workers, minute, by, wait) => {
    const state = told(...apart, ...geared(...workers), critical)
    const step = state.steps.get(2)
    expect(step && minutesToWait(step, clockAt(minute, by))).toBe(wait)
    const decision = decide(state, { do: 'see-again', line: 't1', says: 'tight' }, clockAt(minute, by))
    if (wait === 0)
      expect(decision).toMatchObject({ ok: true, body: { type: 'seen-again', step: 2, line: 't1' } })
    else
      expect(decision).toEqual({
        ok: false,
        refusal: {
          code: 'second-too-soon',
          step: 2,
          line: 't1',
          by: by.trim(),
          afterMinutes: 30,
          waitMinutes: wait,
        },
      })
  })

  test('work after the first look begins the time anew', () => {
    const state = told(...apart, ...geared('Anna'), critical, [
      20,
      'Anna',
      { do: 'reopen', steps: [2], reason: 'so' },
    ])
    expect(decide(state, { do: 'see-again', line: 't1', says: 'tight' }, clockAt(60, 'Ben'))).toMatchObject({
      refusal: { code: 'second-before-done', built: 'redo' },
    })
  })
})

test.each<[string, Act[], Command, object]>([
  [
    'a step that nobody made critical',
    [],
    { do: 'see-again', line: 't1', says: 'tight' },
    { code: 'not-critical', step: 2 },
  ],
  [
    'nothing said',
    [critical],
    { do: 'see-again', line: 't1', says: '  ' },
    { code: 'text-missing', what: 'text' },
  ],
  [
    'a mark that is not there',
    [critical],
    { do: 'see-again', line: 'm9', says: 'seen' },
    { code: 'unknown', what: 'mark', id: 'm9' },
  ],
  [
    'a tightening that is not there',
    [critical],
    { do: 'see-again', line: 't9', says: 'seen' },
    { code: 'unknown', what: 'tightening' },
  ],
  [
    'nothing that is put on',
    [critical],
    { do: 'see-again', line: 's9', says: 'seen' },
    { code: 'unknown', what: 'consumable' },
  ],
  [
    'a piece of another step',
    [critical],
    { do: 'see-again', step: 2, line: 'p1', says: 'seen' },
    { code: 'not-a-second-line', known: ['p2', 'm1', 't1'] },
  ],
])('refused: %s', (_, acts, command, refusal) => {
  const state = told(...apart, ...geared('Anna'), ...acts)
  expect(decide(state, command, clockAt(60, 'Ben'))).toMatchObject({ ok: false, refusal })
})

test('the gate of an override lets a cover go on over what was not seen', () => {
  const state = told(...apart, ...geared('Anna'), critical, [12, '', override('start 1')], [12, '', look(1)])
  expect(new Gates(state).start(1)).toEqual([])
})

test('whoever looks, whenever: taken exactly when it is somebody else, or late enough after the last work', () => {
  const name = fc.constantFrom('Anna', 'Ben', '')
  let taken = 0
  fc.assert(
    fc.property(
      fc.array(name, { minLength: 1, maxLength: 3 }),
      name,
      fc.integer({ min: 1, max: 90 }),
      fc.integer({ min: 0, max: 120 }),
      (workers, by, afterMinutes, minute) => {
        const asked: Act = [11, '', { do: 'change-step', step: 2, critical: { afterMinutes } }]
        const state = told(...apart, ...geared(...workers), asked)
        const decision = decide(state, { do: 'see-again', line: 't1', says: 'tight' }, clockAt(minute, by))
        // The last work was done in the ninth minute.
        const isOther = by !== '' && !workers.includes(by)
        expect(decision.ok).toBe(isOther || minute - 9 >= afterMinutes)
        if (decision.ok) taken += 1
      },
    ),
    { numRuns: 200, seed: 49 },
  )
  expect(taken).toBeGreaterThan(50)
})

test.each([0, -1, Number.NaN, 1e9])('%s minutes are no time to wait', (afterMinutes) =>
  expect(decide(told(...apart), { do: 'change-step', step: 1, critical: { afterMinutes } })).toMatchObject({
    ok: false,
    refusal: { code: 'count-wrong' },
  }),
)
