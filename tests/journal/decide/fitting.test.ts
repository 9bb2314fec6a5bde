import { describe, expect, test } from 'vitest'
import { placesOf } from '../../../src/ledger/ledger.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import {
  alike,
  at,
  bag,
  begin,
  done,
  endStrip,
  move,
  off,
  putOn,
  reopen,
  replace,
  supply,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const where = (job: ReturnType<typeof given>, piece: PieceId) =>
  placesOf(job.state.ledger, piece).map(({ place, count }) => `${count} ${place}`)
const because = { reason: 'it is so' }

describe('used ones whose home is filled again', () => {
  const bolts = given(off(4, 'stretch bolts', { singleUse: true }), endStrip)
  const renewed = bolts.and(supply('p1', 4), begin(1))

  test('go to scrap in the entry that fits the last of the new', () => {
    const half = renewed.and(putOn('p2', undefined, 3))
    expect(where(half, 'p1')).toEqual(['4 c1'])
    half.when(putOn('p2')).makes('fitted', {
      moves: [
        { piece: 'p2', count: 1, to: 'machine' },
        { piece: 'p1', count: 4, from: 'c1', to: 'scrap' },
      ],
    })
  })

  test('only from where a hand can reach them, and declared spares stay', () => {
    const scattered = bolts.and(
      move('p1', at('out'), { count: 1 }),
      move('p1', at('spare'), { count: 1, from: 'c1' }),
      supply('p1', 4),
      begin(1),
      putOn('p2'),
    )
    expect(where(scattered, 'p1').sort()).toEqual(['1 out', '1 spare', '2 scrap'])
  })

  test('of every generation', () => {
    const twice = renewed.and(putOn('p2'), done(1), reopen(1), supply('p2', 4), begin(1), putOn('p3'))
    expect([where(twice, 'p1'), where(twice, 'p2')]).toEqual([['4 scrap'], ['4 scrap']])
  })

  test('stay while something that is owed sits on them', () => {
    const plug = given(
      off(1, 'crush plug', { singleUse: true }),
      off(1, 'sump', { kind: 'part' }),
      endStrip,
      { do: 'carry', on: 'p1', items: [{ kind: 'fastener', name: 'magnet', count: 1 }] },
      supply('p1', 1),
      { do: 'override', target: 'start 1', reason: 'the magnet is stuck' },
      begin(1),
    )
    expect(where(plug.and(putOn('p4')), 'p1')).toEqual(['1 c1'])
  })

  test('and what is not single-use stays where it lies', () => {
    const plain = given(off(4, 'bolts'), endStrip, replace('p1', 4), begin(1), putOn('p2'))
    expect(where(plain, 'p1')).toEqual(['4 c1'])
  })
})

describe('a used piece that is offered again', () => {
  const job = given(
    off(4, 'stretch bolts', { singleUse: true }),
    off(1, 'gasket', { kind: 'part', singleUse: true, into: bag(1) }),
    endStrip,
    { do: 'override', target: 'start 1', reason: 'to try the fit' },
    begin(1),
  )

  test('is refused by its name, and so is one that was replaced', () => {
    job.when(putOn('p1')).refuses('piece-used', { piece: 'p1' })
    job.when(putOn('p2')).refuses('piece-used', { piece: 'p2' })
    const renewed = job.and(supply('p1', 4), supply('p2', 1), alike('p4', { keep: true }))
    renewed.when(putOn('p1')).refuses('law', { violation: { law: 'home-full', piece: 'p1', should: 0 } })
  })

  test('goes back by a named decision only, once', () => {
    const again = job.and({ do: 'use-again', piece: 'p1', ...because }, putOn('p1'))
    expect(where(again, 'p1')).toEqual(['4 machine'])
    again
      .and(reopen(1))
      .when(begin(1))
      .refuses('step-blocked', { reasons: [{ piece: 'p1' }, { piece: 'p2' }] })
  })
})
