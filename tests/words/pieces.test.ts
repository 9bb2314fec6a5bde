import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { agree, countedPiece, countedPieces, homeName, isStray, pieceName } from '../../src/words/pieces.ts'
import { begin, job, off, put, recount, set, tool } from '../errors/commands.ts'
import { play } from '../errors/play.ts'

/** The first piece that comes off so: its name, one and four of it, its home. */
function told(command: Command) {
  const { state } = play([job, begin('Valve cover off'), command])
  return [
    pieceName(state, 'p1'),
    countedPiece(state, 'p1', 1),
    countedPiece(state, 'p1', 4),
    homeName(state, 'p1'),
  ]
}

describe('the name of a piece, one of it, four of it, and its home', () => {
  test('common pieces', () => {
    expect(told(off(8, 'valve cover bolts', { size: 'M6x25 hex 10' }))).toEqual([
      'valve cover bolts M6x25 hex 10',
      '1 × valve cover bolt M6x25 hex 10',
      '4 × valve cover bolts M6x25 hex 10',
      'Valve cover',
    ])
  })

  test('common pieces whose positions were written down', () => {
    expect(told(off(3, 'bolts', { alikeAt: ['1', '2', '3'] }))).toEqual([
      'bolts',
      '1 × bolt',
      '4 × bolts',
      'Valve cover / 1, 2, 3',
    ])
  })

  test('the only one', () => {
    expect(told(off(1, 'timing chains'))[0]).toBe('timing chain')
  })

  test('matched pieces', () => {
    expect(told(set('cam caps', ['I3', 'I4']))).toEqual([
      'cam cap I3',
      'cam cap I3',
      '4 × cam cap I3',
      'Valve cover / cam caps / I3',
    ])
  })

  test('a matched bolt, whose position is a number', () => {
    expect(
      told(off(1, 'pump bolts', { positions: ['4'], size: 'M6x35', at: 'pump' })).filter(Boolean),
    ).toEqual([
      'pump bolt M6x35 position 4',
      'pump bolt M6x35 position 4',
      '4 × pump bolt M6x35 position 4',
      'pump / position 4',
    ])
  })

  test('the end of a hose, and a plug that has one end', () => {
    const hose = off(2, 'coolant hose', { kind: 'connection', positions: ['pump outlet', 'radiator'] })
    expect(told(hose)[0]).toBe('coolant hose end at pump outlet')
    const ends = off(2, 'hose ends', { kind: 'connection', positions: ['pump outlet', 'radiator'] })
    expect(told(ends)[0]).toBe('hose end at pump outlet')
    expect(told(off(1, 'coil connector', { kind: 'connection', positions: ['coil 2'] }))[0]).toBe(
      'coil connector at coil 2',
    )
  })

  test('an aid by where it is, a tool by its name', () => {
    expect(told(put('rag', 'inlet port 1')).slice(0, 2)).toEqual([
      'rag at inlet port 1',
      '1 × rag at inlet port 1',
    ])
    expect(told(tool('crank locking pin'))[0]).toBe('crank locking pin')
  })

  test('a home that already says what it is for is not said twice', () => {
    const home = (at: string, name: string) => told(off(2, name, { positions: ['I1', 'I2'], at }))[3]
    expect([
      home('cylinder head', 'cam caps'),
      home('Cam caps', 'cam caps'),
      home('pump', 'pump bolts'),
    ]).toEqual(['cylinder head / cam caps / I1', 'Cam caps / I1', 'pump / I1'])
  })

  test('a piece that the record does not know', () => {
    const { state } = play([job])
    expect([pieceName(state, 'p9'), countedPiece(state, 'p9', 2), homeName(state, 'p9')]).toEqual([
      'piece p9',
      '2 × piece p9',
      'the home of piece p9',
    ])
  })
})

describe('the verb that goes with a name', () => {
  test.each([
    [off(8, 'bolts'), 'belong'],
    [off(1, 'bolts'), 'belongs'],
    [off(8, 'bolt'), 'belongs'],
    [set('cam caps', ['I1', 'I2']), 'belongs'],
  ])('%#', (command, verb) => {
    const { state } = play([job, begin('Seat off'), command])
    expect(agree(state, 'p1', 'belongs', 'belong')).toBe(verb)
  })
})

test('a piece that nobody knows is told from one that was left off', () => {
  const { state } = play([
    job,
    begin('Seat off'),
    off(1, 'bracket'),
    { do: 'leave-off', piece: 'p1', reason: 'not used on this model' },
    recount(1, ['p1', 1], [null, 1]),
    {
      do: 'explain',
      difference: 'd1',
      how: { kind: 'unknown-piece', name: 'black washer' },
      reason: 'nobody knows it',
    },
  ])
  expect([...state.ledger.accounts.values()].map(isStray)).toEqual([false, true])
})

test('numbers of several pieces, those of one set together', () => {
  const { state } = play([
    job,
    begin('Head off'),
    set('cam caps', ['I1', 'I2', 'I3']),
    off(4, 'studs'),
    off(1, 'cylinder head', { kind: 'part' }),
  ])
  const one = (piece: 'p1' | 'p2' | 'p5') => ({ piece, count: 1 })
  expect(countedPieces(state, [one('p5'), one('p1'), one('p2'), { piece: 'p4', count: 3 }])).toBe(
    '1 × cylinder head, 2 × cam caps I1, I2 and 3 × studs',
  )
  expect(countedPieces(state, [one('p2')])).toBe('cam cap I2')
})

test('both ends of one hose', () => {
  const { state } = play([
    job,
    begin('Carburettor off'),
    off(2, 'fuel hose', { kind: 'connection', positions: ['tank', 'rail'] }),
  ])
  const both = [...state.ledger.accounts.keys()].map((piece) => ({ piece, count: 1 }))
  expect(countedPieces(state, both)).toBe('2 × fuel hose ends at tank, rail')
})
