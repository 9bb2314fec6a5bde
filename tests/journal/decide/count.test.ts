import { describe, expect, test } from 'vitest'
import type { Command, Explanation } from '../../../src/journal/command.ts'
import { placesOf } from '../../../src/ledger/ledger.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import {
  aidIn,
  at,
  bag,
  count,
  done,
  endStrip,
  hand,
  look,
  matchedOff,
  move,
  newBag,
  off,
  putOn,
  slot,
  strip,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const explain = (
  how: Explanation,
  difference: `d${number}` = 'd1',
  reason = 'looked in the sump',
): Command => ({
  do: 'explain',
  difference,
  how,
  reason,
})
const where = (job: ReturnType<typeof given>, piece: PieceId) =>
  placesOf(job.state.ledger, piece).map((held) => `${held.count} ${held.place}`)
const open = (job: ReturnType<typeof given>) =>
  [...job.state.differences.values()].filter(({ settled }) => settled === null).map(({ id }) => id)

/** Six bolts and three nuts in bag 1, two clips in bag 2. */
const bags = given(off(6, 'bolts'), off(3, 'nuts', { into: hand }), off(2, 'clips'), endStrip)

describe('a blind count', () => {
  test.each<[string, Command, string[]]>([
    ['agrees', count(1, ['p1', 6], ['p2', 3]), []],
    ['one short', count(1, ['p1', 5], ['p2', 3]), ['d1']],
    ['one too many is as wrong', count(1, ['p1', 7], ['p2', 3]), ['d1']],
    ['one of each wrong', count(1, ['p1', 5], ['p2', 4]), ['d1', 'd2']],
    ['strangers are in it', count(1, ['p1', 6], ['p2', 3], [null, 2]), ['d1']],
    ['no strangers', count(1, ['p1', 6], ['p2', 3], [null, 0]), []],
    ['a clip is in the wrong bag', count(1, ['p1', 6], ['p2', 3], ['p3', 1]), ['d1']],
    ['slot by slot: the numbers of one piece add up', count(1, ['p1', 4], ['p1', 2], ['p2', 3]), []],
  ])('%s', (_, command, differences) => {
    const counted = bags.and(command)
    expect(open(counted)).toEqual(differences)
    expect(where(counted, 'p1')).toEqual(['6 c1'])
  })

  test('of a tray takes its slots together', () => {
    const tray = given(
      { do: 'open-container', kind: 'tray', slots: 4 },
      off(4, 'bolts', { into: hand }),
      endStrip,
    )
    const spread = tray.and(move('p1', { kind: 'container', no: 1, slot: '3' }, { count: 1 }))
    expect(where(spread, 'p1')).toEqual(['3 c1/1', '1 c1/3'])
    expect(open(spread.and(count(1, ['p1', 4])))).toEqual([])
    expect(open(spread.and(count(1, ['p1', 3], ['p1', 1])))).toEqual([])
    expect(open(spread.and(count(1, ['p1', 3])))).toEqual(['d1'])
  })

  test.each<[string, Command, string, object]>([
    ['a kind left out', count(1, ['p1', 6]), 'count-by-piece', { pieces: ['p2'] }],
    ['nothing said', count(1), 'count-by-piece', { pieces: ['p1', 'p2'] }],
    ['less than none', count(1, ['p1', -1], ['p2', 3]), 'count-wrong', {}],
    ['half a bolt', count(1, ['p1', 5.5], ['p2', 3]), 'count-wrong', {}],
    ['too many to be true, in two parts', count(1, ['p1', 9999], ['p1', 1], ['p2', 3]), 'count-wrong', {}],
    ['a piece nobody knows', count(1, ['p1', 6], ['p2', 3], ['p9', 1]), 'unknown', { what: 'piece' }],
    ['a bag nobody knows', count(9, ['p1', 6]), 'unknown', { what: 'container' }],
  ])('refused: %s', (_, command, code, facts) => {
    bags.when(command).refuses(code as 'law', { ...facts })
  })

  test('an empty bag is counted as empty', () => {
    const empty = given({ do: 'open-container', kind: 'bag' })
    empty.when(count(1)).refuses('count-by-piece', { pieces: [] })
    expect(open(empty.and(count(1, [null, 0])))).toEqual([])
  })

  test('a later one settles an earlier one: by agreeing, or by a difference of its own', () => {
    const short = bags.and(count(2, ['p3', 1]))
    expect(open(short.and(count(2, ['p3', 2])))).toEqual([])
    expect(short.and(count(2, ['p3', 2])).state.differences.get('d1')?.settled).toContain('it agrees')
    expect(open(short.and(count(2, ['p3', 1])))).toEqual(['d2'])
    expect(short.and(count(2, ['p3', 1])).state.differences.get('d1')?.settled).not.toContain('it agrees')
    expect(open(short.and(count(1, ['p1', 6], ['p2', 3])))).toEqual(['d1'])
  })
})

describe('a difference is explained, and the ledger put right', () => {
  const short = bags.and(count(1, ['p1', 4], ['p2', 3]))
  const over = bags.and(count(1, ['p1', 7], ['p2', 3]))
  const strangers = bags.and(count(1, ['p1', 6], ['p2', 3], [null, 2]))

  test.each<[string, ReturnType<typeof given>, Explanation, PieceId, string[]]>([
    ['two are missing', short, { kind: 'missing' }, 'p1', ['4 c1', '2 lost']],
    [
      'two went into the other bag',
      short,
      { kind: 'moved', piece: 'p1', other: bag(2) },
      'p1',
      ['4 c1', '2 c2'],
    ],
    [
      'two lie on the bench',
      short,
      { kind: 'moved', piece: 'p1', other: at('bench') },
      'p1',
      ['4 c1', '2 bench'],
    ],
    [
      'two went into a bag that had no label',
      short,
      { kind: 'moved', piece: 'p1', other: newBag },
      'p1',
      ['4 c1', '2 c3'],
    ],
    [
      'the one too many came from the bench',
      bags.and(move('p1', at('bench'), { count: 2 }), count(1, ['p1', 5], ['p2', 3])),
      { kind: 'moved', piece: 'p1', other: at('bench') },
      'p1',
      ['5 c1', '1 bench'],
    ],
    [
      'the strangers are clips from the other bag',
      strangers,
      { kind: 'moved', piece: 'p3', other: bag(2) },
      'p3',
      ['2 c1'],
    ],
    [
      'nobody knows the strangers',
      strangers,
      { kind: 'unknown-piece', name: 'black washer' },
      'p4',
      ['2 c1'],
    ],
    [
      'the seventh is not one of the bolts',
      over,
      { kind: 'unknown-piece', name: 'longer bolt' },
      'p4',
      ['1 c1'],
    ],
  ])('%s', (_, job, how, piece, places) => {
    const explained = job.and(explain(how))
    expect(open(explained)).toEqual([])
    expect(where(explained, piece)).toEqual(places)
  })

  test('a stranger belongs nowhere, and stays a leftover until somebody says what it is', () => {
    const job = strangers.and(explain({ kind: 'unknown-piece', name: 'black washer' }))
    expect(job.state.ledger.accounts.get('p4')).toMatchObject({ should: 0, piece: { name: 'black washer' } })
    const tidy = job.and(putOn('p1'), putOn('p2'), putOn('p3'), done(1))
    tidy
      .when({ do: 'clear' })
      .refuses('not-clear', { leftovers: [{ code: 'old-lying', piece: 'p4', count: 2 }] })
    tidy
      .and(move('p4', at('scrap')))
      .when({ do: 'clear' })
      .makes('cleared')
  })

  test('a bolt that was recorded as fitted turns up in its bag: then its home is short again', () => {
    const fitted = bags.and(putOn('p1'), count(1, ['p1', 1], ['p2', 3]))
    const job = fitted.and(explain({ kind: 'moved', piece: 'p1', other: at('machine') }))
    expect(where(job, 'p1')).toEqual(['5 machine', '1 c1'])
  })

  test.each<[string, ReturnType<typeof given>, Command, string, object]>([
    [
      'nothing is missing where there is too much',
      over,
      explain({ kind: 'missing' }),
      'explains-nothing',
      { over: 1 },
    ],
    ['strangers are not missing', strangers, explain({ kind: 'missing' }), 'explains-nothing', {}],
    [
      'no stranger explains that some are short',
      short,
      explain({ kind: 'unknown-piece', name: 'x' }),
      'explains-nothing',
      { over: -2 },
    ],
    [
      'another piece leaves this one as wrong',
      short,
      explain({ kind: 'moved', piece: 'p2', other: bag(2) }),
      'explains-nothing',
      { kind: 'moved' },
    ],
    [
      'there are none where they came from',
      over,
      explain({ kind: 'moved', piece: 'p1', other: bag(2) }),
      'not-within-reach',
      { wanted: 1, there: 0 },
    ],
    [
      'nor in a new bag',
      over,
      explain({ kind: 'moved', piece: 'p1', other: newBag }),
      'not-within-reach',
      { there: 0 },
    ],
    [
      'fewer are in the bag than went astray',
      short.and(move('p1', at('bench'), { count: 5 })),
      explain({ kind: 'missing' }),
      'not-within-reach',
      { wanted: 2, there: 1 },
    ],
    [
      'they did not go home by being counted',
      short,
      explain({ kind: 'moved', piece: 'p1', other: at('machine') }),
      'through-a-step',
      {},
    ],
    [
      'into the bag they went missing from',
      short,
      explain({ kind: 'moved', piece: 'p1', other: bag(1) }),
      'law',
      {},
    ],
    ['into a bag nobody knows', short, explain({ kind: 'moved', piece: 'p1', other: bag(9) }), 'unknown', {}],
    [
      'a piece nobody knows',
      strangers,
      explain({ kind: 'moved', piece: 'p9', other: bag(2) }),
      'unknown',
      {},
    ],
    [
      'a difference nobody knows',
      short,
      explain({ kind: 'missing' }, 'd9'),
      'unknown',
      { what: 'difference' },
    ],
    ['no reason', short, explain({ kind: 'missing' }, 'd1', ' '), 'text-missing', {}],
    ['no name', strangers, explain({ kind: 'unknown-piece', name: ' ' }), 'text-missing', {}],
    ['settled already', short.and(explain({ kind: 'missing' })), explain({ kind: 'missing' }), 'already', {}],
  ])('refused: %s', (_, job, command, code, facts) => {
    job.when(command).refuses(code as 'law', { ...facts })
  })

  test('an aid that was thought to be in the bag is in the machine', () => {
    const job = given(
      off(1, 'bolt'),
      aidIn('rag'),
      endStrip,
      move('p2', bag(1)),
      count(1, ['p1', 1], ['p2', 0]),
    )
    expect(where(job.and(explain({ kind: 'moved', piece: 'p2', other: at('machine') })), 'p2')).toEqual([
      '1 machine',
    ])
  })

  test('slot by slot: what came from a named slot, and what was found over takes a slot of its own', () => {
    const tray: Command = { do: 'open-container', kind: 'tray', slots: 4 }
    const job = given(tray, off(4, 'bolts', { into: hand }), off(2, 'nuts', { into: hand }), endStrip).and(
      move('p1', slot(1, 4), { count: 1 }),
      off(1, 'clip', { into: newBag }),
    )
    const came = job.and(
      count(2, ['p3', 1], ['p1', 1]),
      explain({ kind: 'moved', piece: 'p1', other: slot(1, 4) }),
    )
    expect(where(came, 'p1')).toEqual(['3 c1/1', '1 c2'])
    job
      .and(count(2, ['p3', 1], ['p1', 2]))
      .when(explain({ kind: 'moved', piece: 'p1', other: slot(1, 4) }))
      .refuses('not-within-reach', { wanted: 2, there: 1 })
    const found = job.and(
      count(1, ['p1', 4], ['p2', 2], [null, 1]),
      explain({ kind: 'unknown-piece', name: 'pin' }),
    )
    expect(where(found, 'p4')).toEqual(['1 c1/3'])
  })

  test('a look taken before holds no more when an aid turns up in the machine, and stands for the rest', () => {
    const job = given(
      strip('valve cover off'),
      off(1, 'cover'),
      aidIn('rag'),
      endStrip,
      move('p2', bag(1)),
      look(1),
    )
    const short = job.and(count(1, ['p1', 1], ['p2', 0]))
    expect(short.and(explain({ kind: 'missing' })).state.steps.get(1)?.looked).toBe(true)
    const inside = short.and(explain({ kind: 'moved', piece: 'p2', other: at('machine') }))
    expect(inside.state.steps.get(1)?.looked).toBe(false)
  })

  test('what was found in a bag that is void by now lies on the bench', () => {
    const job = bags.and(
      move('p3', bag(1)),
      count(2, [null, 1]),
      { do: 'void-container', container: 2, reason: 'torn' },
      explain({ kind: 'unknown-piece', name: 'washer' }),
    )
    expect(where(job, 'p4')).toEqual(['1 bench'])
  })

  test('a matched piece is missing by its own name', () => {
    const caps = given(
      matchedOff(['I1', 'I2'], 'cap'),
      endStrip,
      count(1, ['p1', 1], ['p2', 0]),
      explain({ kind: 'missing' }),
    )
    expect(where(caps, 'p2')).toEqual(['1 lost'])
  })
})
