import { describe, expect, test } from 'vitest'
import {
  measuresAbout,
  measuresInForce,
  measuresOfStep,
  measureViews,
  outOfLimits,
} from '../../src/session/measure-views.ts'
import { told } from '../lines/told.ts'

const head = ['begin cylinder head off', 'off cylinder head into bench']

describe('measured again', () => {
  test('the later one of the same name takes its place; both stay on record', () => {
    const state = told(
      ...head,
      'measure flatness of head: 0.07 feeler 0.01 max 0.05',
      'measure Flatness of head: 0.03 feeler 0.01 max 0.05',
    )
    expect(measuresInForce(state).map(({ measure, judged }) => [measure.id, judged.verdict])).toEqual([
      ['q2', 'in'],
    ])
    expect(measureViews(state).map(({ measure, replacedBy }) => [measure.id, replacedBy])).toEqual([
      ['q1', 'q2'],
      ['q2', null],
    ])
  })

  test('one valve measured again is judged by its later reading alone', () => {
    const state = told(
      ...head,
      'measure valve clearance I1..I2: 0.10 0.15 feeler 0.01 limits 0.13..0.17',
      'measure valve clearance i1: 0.15 feeler 0.01 limits 0.13..0.17',
    )
    expect(
      measuresInForce(state).map(({ judged, again }) => [
        judged.results.map(({ at }) => at),
        judged.verdict,
        again,
      ]),
    ).toEqual([
      [['I2'], 'in', ['I1']],
      [['i1'], 'in', []],
    ])
  })

  test('all valves measured again one by one leave nothing of the first', () => {
    const state = told(
      ...head,
      'measure valve clearance I1..I2: 0.10 0.10',
      'measure valve clearance I1: 0.15',
      'measure valve clearance I2: 0.15',
    )
    expect(measureViews(state).map(({ replacedBy }) => replacedBy)).toEqual(['q3', null, null])
  })

  test('another surface, another size or another kind is another measurement', () => {
    const state = told(
      ...head,
      'measure flatness of head: 0.02',
      'measure flatness of block: 0.02',
      'measure bore of cylinder 1: 76.0',
      'measure taper of cylinder 1: 0.01',
    )
    expect(measuresInForce(state)).toHaveLength(4)
  })

  test('what is undone is gone', () => {
    const state = told(...head, 'measure flatness of head: 0.07 max 0.05', 'undo')
    expect(measureViews(state)).toEqual([])
  })
})

test('of a step, and out of its limits', () => {
  const state = told(
    ...head,
    'measure flatness of head: 0.07 feeler 0.01 max 0.05',
    'measure valve clearance I1: 0.15 limits 0.13..0.17',
    'measure bore of cylinder 1: 76.0',
  )
  expect(measuresOfStep(state, 1).map(({ measure }) => measure.id)).toEqual(['q1', 'q2', 'q3'])
  expect(outOfLimits(state, 1).map(({ measure }) => measure.id)).toEqual(['q1'])
  expect(measuresOfStep(state, 2)).toEqual([])
})

test.each([
  [null, ['q1', 'q2']],
  ['flatness', ['q1']],
  ['HEAD', ['q1']],
  ['I1', ['q2']],
  ['valve clearance', ['q2']],
  ['q2', ['q2']],
  ['crankshaft', []],
])('asked about %s', (words, ids) => {
  const state = told(...head, 'measure flatness of head: 0.02', 'measure valve clearance: I1 0.15')
  expect(measuresAbout(state, words).map(({ measure }) => measure.id)).toEqual(ids)
})
