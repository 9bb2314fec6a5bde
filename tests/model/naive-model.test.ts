import { describe, expect, test } from 'vitest'
import type { Entry, EntryBody } from '../../src/journal/entry.ts'
import {
  addStep,
  aidIn,
  angle,
  at,
  begin,
  clear,
  drain,
  endStrip,
  lose,
  mark,
  matchedOff,
  move,
  off,
  putOn,
  snug,
  stop,
  strip,
  tightening,
  toolOut,
  turn,
  undo,
} from '../support/commands.ts'
import { numbered, openJob, record } from '../support/record.ts'
import { inForce, NaiveModel } from './naive-model.ts'

// The judge is judged here, on jobs small enough to be read with the eye.

describe('what is not explained', () => {
  test.each([
    ['nothing came off', [], []],
    ['4 bolts in a bag', [off(4, 'bolts'), endStrip], ['p1 lies c1 4', 'step 1 not done']],
    [
      '4 belong there, 3 came off',
      [off(4, 'bolts', { found: 3 }), endStrip],
      ['p1 lies c1 3', 'p1 short 1', 'step 1 not done'],
    ],
    [
      'one is lost',
      [off(4, 'bolts'), endStrip, lose('p1', 1)],
      ['p1 lies c1 3', 'p1 lost 1', 'p1 short 1', 'step 1 not done'],
    ],
    [
      'a spare fills a home only when nothing else does',
      [off(2, 'bolts'), endStrip, move('p1', at('spare'), { count: 1 })],
      ['p1 lies c1 1', 'p1 lies spare 1', 'step 1 not done'],
    ],
    ['a rag is in the port', [aidIn('rag'), endStrip], ['p1 lies machine 1', 'step 1 not done']],
    ['a magnet is on the bench', [toolOut('magnet'), endStrip], ['p1 lies bench 1']],
    ['oil is drained', [drain('oil'), endStrip], ['f1 empty', 'step 1 not done']],
    ['a mark is owed', [mark('dot up'), endStrip], ['m1 not seen', 'step 1 not done']],
    ['a look inside, and nothing to put back', [strip('look inside'), endStrip], []],
    ['a check to be done', [addStep('turn by hand')], ['step 1 not done']],
    ['a check after the start', [addStep('look for leaks', { way: 'after-start' })], []],
  ])('%s', (_, commands, unexplained) => {
    expect(new NaiveModel(record([openJob, ...commands]).entries).unexplained()).toEqual(unexplained)
  })

  test('everything is back', () => {
    const { entries } = record([openJob, off(4, 'bolts'), endStrip, putOn('p1'), { do: 'close-step' }, clear])
    expect(new NaiveModel(entries).unexplained()).toEqual([])
  })
})

describe('what no hand could do', () => {
  const caps = record([openJob, matchedOff(['I1', 'I2'], 'cap'), off(1, 'stud'), endStrip, begin(1)]).entries
  const pair = { piece: 'p1', count: 1, from: 'c1', to: 'machine' } as const
  const bodies: [string, EntryBody, string][] = [
    [
      'a piece taken from where it is not',
      { type: 'moved', moves: [{ ...pair, from: 'c9', to: 'bench' }] },
      'no p1 is at c9',
    ],
    [
      'two of one taken',
      { type: 'moved', moves: [{ ...pair, count: 2, to: 'bench' }] },
      'no p1 is at c1, so none can go',
    ],
    [
      'a cap at its neighbour’s home',
      { type: 'fitted', step: 1, began: false, moves: [{ ...pair, position: 'I2' }] },
      'p1 belongs at I1 and went to I2',
    ],
    [
      'a piece nobody has seen',
      { type: 'moved', moves: [{ ...pair, piece: 'p9', to: 'bench' }] },
      'nobody has seen p9',
    ],
    ['an undo out of turn', { type: 'undone', entry: 2 }, 'entry 2 was taken back out of turn'],
    ['a redo of nothing', { type: 'redone', entry: 2 }, 'entry 2 was brought back out of turn'],
    [
      'one more at home than belongs there',
      {
        type: 'supplied',
        pieces: [],
        openings: [{ piece: 'p3', count: 2, at: 'supplier' }],
        moves: [{ piece: 'p3', count: 2, from: 'supplier', to: 'machine' }],
        retired: [],
      },
      'more p3 at home than belong there',
    ],
  ]
  test.each(bodies)('%s', (_, body, error) => {
    expect(() => new NaiveModel([...caps, numbered(body, caps.length + 1)])).toThrow(error)
  })

  test('a reopened step with its pieces still on', () => {
    const { entries } = record([putOn('p1', 'I1')], caps)
    const body: EntryBody = { type: 'reopened', steps: [1], moves: [], reason: 'leaks' }
    expect(() => new NaiveModel([...entries, numbered(body, entries.length + 1)])).toThrow('p1 is still on')
  })

  test('a bolt turned out of turn, and one turned while another is in doubt', () => {
    const { entries } = record([
      openJob,
      off(2, 'bolts'),
      endStrip,
      tightening('p1', [snug, angle(90)]),
      putOn('p1'),
      turn(),
      turn(),
      turn(),
    ])
    const next = (body: EntryBody) => [...entries, numbered(body, entries.length + 1)]
    expect(() => new NaiveModel(next(turned(1, '1')))).toThrow('1 was turned in pass 1, and 2 in 1 was next')
    const stopped = record([stop()], entries).entries
    expect(() => new NaiveModel([...stopped, numbered(turned(1, '2'), stopped.length + 1)])).toThrow(
      '2 was turned while 2 was in doubt',
    )
  })
})

test('undo and redo walk back and forth; new work ends the way forward', () => {
  const work = (n: number): Entry => numbered({ type: 'noted', step: null, kind: 'note', text: `${n}` }, n)
  const back = (entry: number, n: number): Entry => numbered({ type: 'undone', entry }, n)
  const forth = (entry: number, n: number): Entry => numbered({ type: 'redone', entry }, n)
  const walk = [work(1), work(2), work(3), back(3, 4), back(2, 5), forth(2, 6), work(7)]
  expect(inForce(walk).map(({ n }) => n)).toEqual([1, 2, 7])
  expect(() => inForce([...walk, forth(3, 8)])).toThrow('out of turn')
  expect(record([openJob, off(1, 'bolt'), undo]).entries.map(({ type }) => type)).toEqual([
    'opened',
    'came-off',
    'undone',
  ])
})

function turned(pass: number, fastener: string): EntryBody {
  return { type: 'tightened', tightening: 't1', pass, fastener }
}
