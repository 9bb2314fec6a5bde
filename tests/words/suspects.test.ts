import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { suspectsOf, suspectsTold } from '../../src/words/suspects.ts'
import {
  aidIn,
  at,
  count,
  endStrip,
  matchedOff,
  move,
  off,
  putOn,
  reopen,
  strip,
} from '../support/commands.ts'
import { given } from '../support/journal.ts'

// What is too many in a bag may be what lay in it once, and is elsewhere by the record.

const bag = { kind: 'container', no: 1 } as const
/** Two lots in bag 1, of which the first is home. */
const job: Command[] = [
  strip('lever off'),
  off(4, 'lever bolts'),
  off(2, 'clips', { into: bag }),
  aidIn('rag'),
  endStrip,
  putOn('p1'),
]
const suspects = (...commands: Command[]) => {
  const { state } = given(...job, ...commands)
  const difference = [...state.differences.values()].findLast(({ settled }) => settled === null)
  return difference ? suspectsOf(state, difference).map(({ piece, place }) => `${piece} ${place}`) : null
}

describe('what a count may have found', () => {
  test.each<[string, Command[], string[] | null]>([
    ['what was taken out, and is on the machine', [count(1, ['p2', 2], [null, 1])], ['p1 machine']],
    ['the last taken out first', [putOn('p2'), count(1, [null, 1])], ['p2 machine', 'p1 machine']],
    ['only what is there in that number', [putOn('p2'), count(1, [null, 3])], ['p1 machine']],
    ['nothing in that number', [putOn('p2'), count(1, [null, 5])], []],
    ['what is on the bench again', [putOn('p2'), reopen(1), count(1, [null, 1])], ['p2 bench', 'p1 bench']],
    ['in two places', [move('p2', at('bench'), { count: 1 }), count(1, ['p2', 2])], ['p2 bench']],
    [
      'no tool or aid',
      [move('p3', bag), move('p3', at('toolbox')), count(1, ['p2', 2], [null, 1])],
      ['p1 machine'],
    ],
    ['too few are looked for otherwise', [count(1, ['p2', 1])], []],
    [
      'another bag has nothing to do with it',
      [{ do: 'open-container', kind: 'bag' }, count(2, [null, 1])],
      [],
    ],
    ['it agrees', [count(1, ['p2', 2])], null],
  ])('%s', (_, commands, found) => {
    expect(suspects(...commands)).toEqual(found)
  })

  test('a set is told as one', () => {
    const set = given(
      strip('caps off'),
      matchedOff(['I1', 'I2', 'I3'], 'cap'),
      endStrip,
      putOn('p1', 'I1'),
      putOn('p2', 'I2'),
      putOn('p3', 'I3'),
      count(1, [null, 1]),
    ).state
    const [difference] = set.differences.values()
    expect(difference && suspectsTold(set, difference)).toEqual([
      {
        text: 'one of 3 × cap I1, I2, I3, recorded as fitted in step 1, caps',
        typed: 'PIECE from machine',
      },
    ])
  })
})
