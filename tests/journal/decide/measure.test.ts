import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { begin, endStrip, matchedOff, off, strip } from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

type Measure = Extract<Command, { do: 'measure' }>
const measure = (
  readings: number[],
  more: Partial<Measure['measurement']> = {},
  about: Partial<Measure> = {},
): Command => ({
  do: 'measure',
  name: 'crank pin',
  measurement: { kind: 'size', readings: readings.map((mm) => ({ mm, typed: `${mm}` })), ...more },
  ...about,
})
const job = given(
  strip('rods off'),
  off(2, 'rod bolts'),
  strip('shims out'),
  matchedOff(['E1', 'E2'], 'shim'),
)

describe('readings', () => {
  test('are kept as they were taken, with a number of their own', () => {
    const { state } = job.and(measure([35.98, 35.99]), measure([36]))
    expect([...state.measures.keys()]).toEqual(['q1', 'q2'])
    expect(state.measures.get('q1')?.measurement.readings).toEqual([
      { mm: 35.98, typed: '35.98' },
      { mm: 35.99, typed: '35.99' },
    ])
  })

  test.each<[string, Command[], Command, number | null]>([
    ['in the step that is named', [], measure([1], {}, { step: 2, piece: 'p1' }), 2],
    ['in the step at hand on the way back', [endStrip, begin(2)], measure([1], {}, { piece: 'p1' }), 2],
    ['where the piece belongs', [], measure([1], {}, { piece: 'p1' }), 1],
    ['in the step that comes off', [], measure([1]), 2],
    ['in none', [endStrip], measure([1]), null],
  ])('belong %s', (_, commands, command, step) => {
    job
      .and(...commands)
      .when(command)
      .makes('measured', { measure: { step } })
  })

  test.each<[string, Command, string, object]>([
    ['none', measure([]), 'measurement-wrong', { why: 'no-reading' }],
    ['no number', measure([Number.NaN]), 'measurement-wrong', { why: 'value' }],
    ['a thousand kilometres', measure([1e12]), 'measurement-wrong', { why: 'value' }],
    ['1001 of them', measure(Array(1001).fill(1)), 'measurement-wrong', { why: 'value' }],
    [
      'by an instrument that shows nothing',
      measure([1], { instrument: { typed: '0', resolutionMm: 0 } }),
      'measurement-wrong',
      { why: 'value' },
    ],
    [
      'with limits the wrong way round',
      measure([1], { limits: { typed: '2..1', leastMm: 2, mostMm: 1 } }),
      'measurement-wrong',
      { why: 'limits' },
    ],
    ['of nothing', measure([1], {}, { name: ' ' }), 'text-missing', { what: 'name' }],
    ['of a piece nobody knows', measure([1], {}, { piece: 'p9' }), 'unknown', {}],
    ['in a step nobody knows', measure([1], {}, { step: 9 }), 'unknown', {}],
  ])('refused: %s', (_, command, code, facts) => {
    job.when(command).refuses(code as 'law', { ...facts })
  })
})

describe('sizes', () => {
  test('are what is marked on each piece now', () => {
    const { state } = job.and({
      do: 'size',
      sizes: [
        { piece: 'p2', size: ' 2.45 ' },
        { piece: 'p3', size: '2.50' },
      ],
    })
    expect(['p2', 'p3'].map((id) => state.ledger.accounts.get(id as 'p2')?.piece.size)).toEqual([
      '2.45',
      '2.50',
    ])
  })

  test.each<[string, Command, string]>([
    ['none', { do: 'size', sizes: [] }, 'text-missing'],
    ['an empty one', { do: 'size', sizes: [{ piece: 'p2', size: ' ' }] }, 'text-missing'],
    ['of what nobody knows', { do: 'size', sizes: [{ piece: 'p9', size: '2.45' }] }, 'unknown'],
  ])('refused: %s', (_, command, code) => {
    job.when(command).refuses(code as 'law')
  })
})
