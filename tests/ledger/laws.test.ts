import { describe, expect, test } from 'vitest'
import type { Move } from '../../src/ledger/account.ts'
import { auditLedger, brokenLaws } from '../../src/ledger/laws.ts'
import { accountOf, enter, post } from '../../src/ledger/ledger.ts'
import { apart } from './ledgers.ts'

const home = (piece: Move['piece'], count: number, position?: string): Move => ({
  piece,
  count,
  from: piece === 'p4' ? 'c2/1' : 'c1',
  to: 'machine',
  position,
})

describe('moves that break no law', () => {
  test.each<[string, Move[]]>([
    ['none', []],
    ['six bolts home', [home('p1', 6)]],
    ['four and then two', [home('p1', 4), home('p1', 2)]],
    ['common bolts home, with a position said that nobody asked for', [home('p1', 1, 'upper left')]],
    ['the cap to its own position', [home('p2', 1, 'I1')]],
    ['a long bolt to either of the shared positions', [home('p4', 1, '5')]],
    ['a long bolt home, no position said', [home('p4', 1)]],
    [
      'a rag into the machine, where nothing is counted',
      [{ piece: 'p3', count: 2, from: 'toolbox', to: 'machine' }],
    ],
    [
      'from bag to bench to bag, the second move living on the first',
      [
        { piece: 'p1', count: 6, from: 'c1', to: 'bench' },
        { piece: 'p1', count: 6, from: 'bench', to: 'c9' },
      ],
    ],
  ])('%s', (_, moves) => {
    expect(brokenLaws(apart(), moves)).toEqual([])
  })
})

describe('moves that break one', () => {
  test.each<[string, Move[], object]>([
    [
      'seven out of a bag of six',
      [{ piece: 'p1', count: 7, from: 'c1', to: 'bench' }],
      { law: 'more-than-there', place: 'c1', there: 6, wanted: 7 },
    ],
    [
      'four twice, together eight',
      [
        { piece: 'p1', count: 4, from: 'c1', to: 'bench' },
        { piece: 'p1', count: 4, from: 'c1', to: 'scrap' },
      ],
      { law: 'more-than-there', there: 2, wanted: 4 },
    ],
    [
      'out of a place where it is not',
      [{ piece: 'p1', count: 1, from: 'c2', to: 'bench' }],
      { law: 'more-than-there', place: 'c2', there: 0 },
    ],
    ['none', [{ piece: 'p1', count: 0, from: 'c1', to: 'bench' }], { law: 'not-whole', count: 0 }],
    ['less than none', [{ piece: 'p1', count: -2, from: 'c1', to: 'bench' }], { law: 'not-whole' }],
    ['half a bolt', [{ piece: 'p1', count: 1.5, from: 'c1', to: 'bench' }], { law: 'not-whole' }],
    ['no number', [{ piece: 'p1', count: Number.NaN, from: 'c1', to: 'bench' }], { law: 'not-whole' }],
    ['from a place to itself', [{ piece: 'p1', count: 1, from: 'c1', to: 'c1' }], { law: 'same-place' }],
    ['a piece nobody knows', [{ piece: 'p9', count: 1, from: 'c1', to: 'bench' }], { law: 'unknown-piece' }],
    [
      'the cap to its neighbour’s position',
      [home('p2', 1, 'I2')],
      { law: 'not-its-position', own: 'I1', tried: 'I2' },
    ],
    ['the cap, no position said', [home('p2', 1)], { law: 'position-not-said', own: 'I1' }],
    [
      'a long bolt to a short one’s hole',
      [home('p4', 1, '3')],
      { law: 'not-its-position', own: '2, 5', tried: '3' },
    ],
  ])('%s', (_, moves, violation) => {
    expect(brokenLaws(apart(), moves)).toEqual([expect.objectContaining(violation)])
  })

  test('a seventh bolt home, bought by mistake', () => {
    const ledger = apart()
    enter(ledger, { piece: 'p1', count: 1, at: 'supplier' })
    const moves: Move[] = [home('p1', 6), { piece: 'p1', count: 1, from: 'supplier', to: 'machine' }]
    expect(brokenLaws(ledger, moves)).toEqual([
      { law: 'home-full', piece: 'p1', should: 6, there: 6, wanted: 1 },
    ])
  })

  test('after a decision the cap goes to its new position and no more to its old one', () => {
    const ledger = apart()
    accountOf(ledger, 'p2').home = { at: 'head', position: 'I4' }
    expect(brokenLaws(ledger, [home('p2', 1, 'I4')])).toEqual([])
    expect(brokenLaws(ledger, [home('p2', 1, 'I1')])).toMatchObject([{ law: 'not-its-position', own: 'I4' }])
  })

  test('every one that is broken is named, and the lawful ones among them still count', () => {
    const moves: Move[] = [
      home('p2', 1, 'E1'),
      { piece: 'p1', count: 5, from: 'c1', to: 'bench' },
      { piece: 'p1', count: 2, from: 'c1', to: 'bench' },
    ]
    expect(brokenLaws(apart(), moves).map(({ law }) => law)).toEqual(['not-its-position', 'more-than-there'])
  })
})

describe('the audit', () => {
  test('of a sound ledger finds nothing', () => {
    expect(auditLedger(apart())).toEqual([])
  })

  test('finds a bolt that appeared', () => {
    const ledger = apart()
    accountOf(ledger, 'p1').at.set('bench', 1)
    expect(auditLedger(ledger)).toEqual([{ law: 'not-conserved', piece: 'p1', entered: 6, found: 7 }])
  })

  test('finds a place that holds less than nothing, though the sum is right', () => {
    const ledger = apart()
    const { at } = accountOf(ledger, 'p1')
    at.set('bench', 8).set('c1', -2)
    expect(auditLedger(ledger)).toEqual([
      { law: 'more-than-there', piece: 'p1', place: 'c1', there: -2, wanted: 0 },
    ])
  })

  test('finds a second piece with the home of one', () => {
    const ledger = apart()
    enter(ledger, { piece: 'p2', count: 1, at: 'supplier' })
    expect(auditLedger(ledger)).toEqual([{ law: 'not-whole', piece: 'p2', count: 2 }])
  })
})

describe('what sits on a piece', () => {
  const onto = (piece: Move['piece'], from: Move['from'], to: Move['to']): Move => ({
    piece,
    count: 1,
    from,
    to,
  })

  test('goes onto a piece that is there, and comes off again', () => {
    const ledger = apart()
    expect(brokenLaws(ledger, [onto('p1', 'c1', 'p2'), onto('p1', 'p2', 'bench')])).toEqual([])
    expect(brokenLaws(ledger, [onto('p1', 'p2', 'bench')])).toMatchObject([
      { law: 'more-than-there', place: 'p2' },
    ])
  })

  test('never goes onto one that is not there, nor onto itself', () => {
    expect(brokenLaws(apart(), [onto('p1', 'c1', 'p99')])).toEqual([
      { law: 'no-carrier', piece: 'p1', carrier: 'p99' },
    ])
    expect(brokenLaws(apart(), [onto('p1', 'c1', 'p1')])).toMatchObject([{ law: 'carried-by-itself' }])
  })

  test('nor does that go onto it, by way of others either', () => {
    const ledger = apart()
    const place = [...accountOf(ledger, 'p2').at.keys()][0] ?? 'bench'
    post(ledger, [onto('p2', place, 'p1')])
    expect(brokenLaws(ledger, [onto('p1', 'c1', 'p2')])).toEqual([
      { law: 'carried-by-itself', piece: 'p1', carrier: 'p2' },
    ])
    post(ledger, [onto('p4', 'c2/1', 'p2')])
    expect(brokenLaws(ledger, [onto('p1', 'c1', 'p4')])).toMatchObject([{ law: 'carried-by-itself' }])
    expect(auditLedger(ledger)).toEqual([])
  })

  test('nor are two put on each other in one act', () => {
    const ledger = apart()
    const place = [...accountOf(ledger, 'p2').at.keys()][0] ?? 'bench'
    expect(brokenLaws(ledger, [onto('p1', 'c1', 'p2'), onto('p2', place, 'p1')])).toEqual([
      { law: 'carried-by-itself', piece: 'p2', carrier: 'p1' },
    ])
  })

  test('but what is taken off first may carry the other', () => {
    const ledger = apart()
    const place = [...accountOf(ledger, 'p2').at.keys()][0] ?? 'bench'
    post(ledger, [onto('p2', place, 'p1')])
    const over: Move[] = [
      { piece: 'p2', count: 1, from: 'p1', to: 'bench' },
      { piece: 'p1', count: 1, from: 'c1', to: 'p2' },
    ]
    expect(brokenLaws(ledger, over)).toEqual([])
  })
})
