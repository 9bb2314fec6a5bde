import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import type { Arrow } from '../../../src/plan/facts.ts'
import { aidIn, clear, drawn, endStrip, matchedOff, off, redo, undo } from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const caps = given(matchedOff(['I1', 'I2', 'I3', 'I4'], 'cap'))
const inRow = drawn('p3', 4, 'I1', 'I2', 'I3', 'I4')
const point = (arrow: Arrow, ...positions: string[]): Command => ({
  do: 'point',
  piece: 'p1',
  positions,
  arrow,
})
const arrows = (job: typeof caps) => job.state.layouts[0]?.places.map(({ arrow }) => arrow)

describe('positions are drawn', () => {
  test('of the whole pattern, whichever piece of it is named', () => {
    caps.when(inRow).makes('laid-out', { of: ['p1', 'p2', 'p3', 'p4'], shape: 'row' })
  })

  test('and drawn anew, undone and drawn again', () => {
    const anew = caps.and(inRow, drawn('p1', 2, 'I1', 'I2', 'I3', 'I4'))
    expect(anew.state.layouts.map(({ shape }) => shape)).toEqual(['grid'])
    expect(anew.and(undo).state.layouts.map(({ shape }) => shape)).toEqual(['row'])
    expect(anew.and(undo, redo).state.layouts.map(({ shape }) => shape)).toEqual(['grid'])
  })

  test.each<[string, Command, string, object]>([
    [
      'one missing, one twice, one that is not there',
      drawn('p1', 4, 'I1', 'I2', 'I2', 'E1'),
      'layout-wrong',
      { missing: ['I3', 'I4'], unknown: ['E1'], twice: ['I2'] },
    ],
    [
      'two in one place',
      {
        do: 'lay-out',
        piece: 'p1',
        layout: {
          shape: 'free',
          places: ['I1', 'I2', 'I3', 'I4'].map((position, index) => ({ position, x: index >> 1, y: 0 })),
        },
      },
      'layout-wrong',
      { together: ['I2', 'I4'] },
    ],
    ['a rag', drawn('p5', 1, '1'), 'no-pattern', {}],
    ['what nobody knows', drawn('p9', 1, '1'), 'unknown', {}],
    ['more than a drawing takes', drawn('p6', 20, '1'), 'count-wrong', { count: 300 }],
  ])('refused: %s', (_, command, code, facts) => {
    caps
      .and(aidIn('rag'), off(300, 'rivets'))
      .when(command)
      .refuses(code as 'law', { ...facts })
  })

  test('leaves the first start cleared', () => {
    const job = given(
      off(2, 'bolts'),
      endStrip,
      { do: 'fit', fittings: [{ piece: 'p1' }] },
      { do: 'close-step' },
    )
    expect(job.and(clear, drawn('p1', 2, '1', '2')).state.cleared).toBe(true)
  })
})

describe('arrows', () => {
  test('point where they are said to, and stay when the drawing is made anew', () => {
    const pointing = caps.and(inRow, point('left', 'I1', 'I3'), point('up', 'I3'))
    expect(arrows(pointing)).toEqual(['left', undefined, 'up', undefined])
    const anew = pointing.and(drawn('p1', 2, 'I1', 'I2', 'I3', 'I4'))
    expect(arrows(anew)).toEqual(['left', undefined, 'up', undefined])
    expect(arrows(anew.and({ ...inRow, arrow: 'down' } as Command))).toEqual(['down', 'down', 'down', 'down'])
  })

  test('are refused where nothing is drawn, or not there', () => {
    caps.when(point('left', 'I1')).refuses('not-laid-out')
    caps.and(inRow).when(point('left', 'E1')).refuses('no-such-position', { position: 'E1' })
  })
})
