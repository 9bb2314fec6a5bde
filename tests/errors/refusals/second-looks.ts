import type { Command } from '../../../src/journal/command.ts'
import type { Cases } from '../case.ts'
import { begin, done, end, fitted, job, marked, off, take, tightening, torque, turn } from '../commands.ts'

const critical: Command = { do: 'change-step', step: 1, critical: { afterMinutes: 30 } }
const again = (line: 'p1' | 'p2' | 'm1' | 't1', says = 'stripes in line'): Command => ({
  do: 'see-again',
  line,
  says,
})
const gear = [job, begin('Gear off'), off(2, 'gear bolts'), marked('dot up'), end, tightening('p1', torque)]
const geared = [...gear, take(1), fitted('p1'), turn(), turn(), { do: 'confirm', mark: 'm1' }] as Command[]

export const secondLookCases = {
  'not-critical': [
    {
      given: [...geared, done(1)],
      when: again('t1'),
      says: [
        'Step 1, Gear, is not critical, so nothing in it is to be seen a second time.',
        '> "step 1 critical" asks for it.',
      ],
    },
  ],
  'second-before-done': [
    {
      given: [...geared, critical],
      when: again('t1'),
      says: [
        'Step 1, Gear, is not done: what may still change cannot be seen a second time.',
        '> "done 1" when it is complete.',
      ],
    },
    {
      given: [...gear, critical],
      when: again('t1'),
      says: ['Step 1, Gear, is not done: what may still change cannot be seen a second time.', '> "take 1".'],
    },
  ],
  'not-a-second-line': [
    {
      given: [...geared, done(1), critical, { do: 'reopen', steps: [1], reason: 'it leaks' }, off(1, 'clip')],
      unreachable: 'a piece that is not on the machine keeps its step from being done',
      refusal: { code: 'not-a-second-line', step: 1, line: 'p2', known: ['p1', 'm1', 't1'] },
      says: [
        'Clip is nothing that is seen a second time in step 1, Gear.',
        '  p1, gear bolts.',
        '  Mark m1 (dot up).',
        '  t1 (Gear: gear bolts).',
        '> Name one of these by its id.',
      ],
    },
    {
      given: [...geared, done(1), critical],
      when: { do: 'see-again', step: 1, line: 'p7', says: 'tight' },
      says: [
        'Piece p7 is nothing that is seen a second time in step 1, Gear.',
        '  p1, gear bolts.',
        '  Mark m1 (dot up).',
        '  t1 (Gear: gear bolts).',
        '> Name one of these by its id.',
      ],
    },
  ],
  'second-too-soon': [
    {
      // Each entry of this story is a minute after the one before.
      given: [...geared, done(1), critical],
      when: again('t1'),
      says: [
        'Too soon for a second look at step 1, Gear: nobody has said who looks, so it may be the one who did the work, and 30 min have to pass after the work.',
        '> Wait 29 min and look from another side, or let somebody else look who says a name with --by.',
      ],
    },
    {
      given: [...geared, done(1), critical],
      unreachable: 'these stories are told without names; tests/journal/decide/second-looks.test.ts has them',
      refusal: {
        code: 'second-too-soon',
        step: 1,
        line: 't1',
        by: 'Robin',
        afterMinutes: 90,
        waitMinutes: 61,
      },
      says: [
        'Too soon for a second look at step 1, Gear: Robin did work in it, and 1 h 30 min have to pass after the work.',
        '> Wait 1 h 1 min and look from another side, or let somebody else look who says a name with --by.',
      ],
    },
  ],
} satisfies Record<string, Cases>
