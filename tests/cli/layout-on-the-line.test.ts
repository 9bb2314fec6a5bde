import { describe, expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

const lots = [
  'begin pump off',
  'off 3 M6x25 hex 10 pump bolts @1..3 into new bag',
  'off 1 M6x110 hex 10 pump bolt @4 into new bag',
]

describe('a drawing of positions on the command line', () => {
  test('is shown with what belongs where and where it is now', () => {
    const { say } = benchWithJob(...lots, 'layout pump bolts: 2x2')
    expect(say('layout pump bolts').out).toBe(
      [
        '4 pump bolts, as drawn:',
        '',
        '   1 M6x25      2 M6x25',
        '',
        '   3 M6x25      4 M6x110',
        '',
        'Where they are now:',
        '',
        '   1 bag 1     2 bag 1',
        '',
        '   3 bag 1     4 bag 2',
        '',
        '"layout p1: 2x2", "layout p1: row", "layout p1: circle" or row by row, "layout p1: 1 2 / . 3", draws them otherwise.',
        '',
      ].join('\n'),
    )
  })

  test('proposed from the names, it says so', () => {
    expect(benchWithJob(...lots).say('layout pump bolts').out).toContain(
      '4 pump bolts, proposed from the names alone:',
    )
  })

  test('too wide for one picture, it says where it goes on', () => {
    const { say } = benchWithJob(
      'begin x off',
      'off 40 M6x25 hex 10 pan bolts into new bag',
      'layout pan bolts: row arrow up',
    )
    const { out } = say('layout pan bolts')
    expect(out).toMatch(/ {5}1 ↑ .* \.\.\n/)
    expect(out).toContain('Too wide for one picture: two dots stand where it goes on.')
    for (const row of out.split('\n').slice(0, -2)) expect(row.length).toBeLessThanOrEqual(80)
  })

  test('is data with --json', () => {
    const { ask } = benchWithJob(...lots, 'layout pump bolts: 2x2')
    expect(ask('layout', 'pump', 'bolts').json).toMatchObject({
      answer: { isProposed: false, layout: { shape: 'grid' }, sizes: { '4': 'M6x110 hex 10' } },
    })
  })
})
