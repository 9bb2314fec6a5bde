import { describe, expect, test } from 'vitest'
import { readLine } from '../../../src/lines/read-line.ts'
import { told, topEnd } from '../told.ts'

const state = told(...topEnd)

function asked(line: string): unknown {
  const reading = readLine(line, state)
  return reading.kind === 'commands' ? reading.commands : reading
}

describe('what is put on', () => {
  test.each<[string, object]>([
    ['sealant 1: grey sealant', { kind: 'sealant', step: 1, name: 'grey sealant' }],
    [
      'sealant 1: grey sealant on the cover face, within 5 min, cures 24 h before coolant, step 2, start, use by 30 Jun 2031, amount 1 tube',
      {
        name: 'grey sealant on the cover face',
        workMinutes: 5,
        cureMinutes: 1440,
        before: ['f1', 2, 'start'],
        expires: '2031-06-30',
        amount: '1 tube',
      },
    ],
    // In any order, and without the commas.
    [
      'sealant step 1: grey sealant amount 2 g cures in 1 h 30 min before steps 2 and 3 within 10 min',
      { name: 'grey sealant', amount: '2 g', cureMinutes: 90, before: [2, 3], workMinutes: 10 },
    ],
    [
      'locker 2: medium locker on the cap bolts, sets 90 min, before the first start',
      { kind: 'locker', cureMinutes: 90, before: ['start'] },
    ],
    // The same words may be part of what is said.
    [
      'lube 2: paste in the groove within the head, two sets before fitting the cover',
      { kind: 'lubricant', name: 'paste in the groove within the head, two sets before fitting the cover' },
    ],
    [
      'gasket side 3: head gasket, the TOP mark up',
      { kind: 'gasket', name: 'head gasket', side: 'TOP mark' },
    ],
    [
      'gasket side 3: head gasket, TOP side up, cures 1 h',
      { name: 'head gasket', side: 'TOP', cureMinutes: 60 },
    ],
    ['put on 1: copper paste, thin', { kind: 'other', name: 'copper paste, thin' }],
  ])('%s', (line, facts) => {
    expect(asked(line)).toEqual([expect.objectContaining({ do: 'set-consumable', ...facts })])
  })

  test.each<[string, object]>([
    ['sealant', { code: 'missing', what: 'N' }],
    ['sealant: grey', { code: 'not-a-number', part: 'grey' }],
    ['sealant 1:', { code: 'missing', what: 'WORDS' }],
    ['sealant 1: within 5 min', { code: 'missing', what: 'WORDS' }],
    ['gasket side 3: head gasket', { code: 'missing', what: 'SIDE up' }],
    ['sealant 1: grey, within 5 min, within 6 min', { code: 'not-understood', part: 'within 6 min' }],
    // No time that somebody believes to have said is taken for words.
    ['sealant 1: grey cures overnight', { code: 'duration', fault: 'no-number' }],
    [
      'sealant 1: grey, cures 24',
      { code: 'two-ways', ways: [expect.stringContaining('24 min'), expect.any(String)] },
    ],
    ['sealant 1: grey, cures 24 h before petrol', { code: 'no-such-fluid', part: 'petrol' }],
    ['sealant 1: grey, use by 31 Feb', { code: 'no-such-day' }],
  ])('not understood: %s', (line, misreading) => {
    expect(asked(line)).toMatchObject({ kind: 'misread', misreading })
  })
})

describe('it is on', () => {
  test.each([['applied s1'], ['applied 1'], ['Applied S1']])('%s', (line) => {
    expect(asked(line)).toEqual([{ do: 'apply', consumable: 's1' }])
  })

  test.each([
    ['applied', 'missing'],
    ['applied sealant', 'not-understood'],
  ])('not understood: %s', (line, code) => {
    expect(asked(line)).toMatchObject({ misreading: { code } })
  })
})

describe('how long a step takes', () => {
  test.each([
    ['step 1 minutes 90', 90],
    ['step 1 minutes 1 h 30 min', 90],
    ['step 1 takes half an hour', 30],
  ])('%s', (line, minutes) => {
    expect(asked(line)).toEqual([{ do: 'change-step', step: 1, minutes }])
  })

  test('no time is said', () => {
    expect(asked('step 1 minutes')).toMatchObject({ misreading: { code: 'missing', what: 'MINUTES' } })
    expect(asked('step 1 takes long')).toMatchObject({ misreading: { code: 'duration' } })
    expect(asked('step 1 minutes 0')).toMatchObject({
      misreading: { code: 'duration', fault: 'not-positive' },
    })
  })
})

test('when it is together', () => {
  expect(asked('finish')).toEqual({ kind: 'ask', ask: { ask: 'finish' } })
})
