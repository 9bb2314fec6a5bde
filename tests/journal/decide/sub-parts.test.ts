import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { auditLedger } from '../../../src/ledger/laws.ts'
import { placesOf } from '../../../src/ledger/ledger.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import {
  alike,
  at,
  begin,
  done,
  endStrip,
  lose,
  move,
  off,
  putOn,
  reopen,
  replace,
  strip,
  toolOut,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

type Item = Extract<Command, { do: 'carry' }>['items'][number]

const where = (job: ReturnType<typeof given>, piece: PieceId) =>
  placesOf(job.state.ledger, piece).map(({ place, count }) => `${count} ${place}`)
const on = (carrier: PieceId, ...items: (Partial<Item> & { name: string })[]): Command => ({
  do: 'carry',
  on: carrier,
  items: items.map((item) => ({ kind: 'fastener', count: 1, ...item })),
})
const over = (to: PieceId, from?: PieceId, ...pieces: PieceId[]): Command => ({
  do: 'move-over',
  from,
  to,
  ...(pieces.length > 0 && { pieces }),
})
const because = { reason: 'it is so' }

const apart = given(off(1, 'pump', { kind: 'part' }), off(2, 'dowels'), endStrip)
const pump = apart.and(on('p1', { name: 'studs', count: 3, size: 'M6x25' }, { name: 'plug' }))
const ringed = pump.and(on('p4', { name: 'seal ring', kind: 'part', singleUse: true }))

describe('sub-parts', () => {
  test('become lines of their own that sit on their piece, in its step', () => {
    expect([where(pump, 'p3'), where(pump, 'p4')]).toEqual([['3 p1'], ['1 p1']])
    expect(pump.state.ledger.accounts.get('p3')).toMatchObject({
      should: 3,
      home: { at: 'pump' },
      piece: { name: 'studs', size: 'M6x25', step: 1 },
    })
    expect(auditLedger(ringed.state.ledger)).toEqual([])
  })

  test('of a matched set have a position each, and fewer than belong there are short', () => {
    const job = apart.and(
      on(
        'p1',
        { name: 'jets', kind: 'part', count: 2, positions: ['A1', 'A2'] },
        { name: 'studs', count: 2, should: 3 },
      ),
    )
    expect(job.state.ledger.accounts.get('p4')?.home).toEqual({ at: 'pump', position: 'A2' })
    expect(job.state.ledger.accounts.get('p5')).toMatchObject({ should: 3, entered: 2 })
    job.when(on('p1', { name: 'jet', positions: ['A2'] })).refuses('home-exists', { piece: 'p4' })
  })

  test('that are single-use are used: a new one goes in', () => {
    expect(ringed.state.used.has('p5')).toBe(true)
    ringed.when(begin(1)).refuses('step-blocked', { reasons: [{ code: 'piece-used', piece: 'p5' }] })
  })

  test('go where their piece goes, and come off it by a move', () => {
    expect(where(pump.and(move('p1', at('out'))), 'p3')).toEqual(['3 p1'])
    expect(where(pump.and(move('p3', at('bench'), { count: 1 })), 'p3')).toEqual(['2 p1', '1 bench'])
  })

  test.each<[string, Command, string, Record<string, unknown>]>([
    ['on what is on the machine', on('p6', { name: 'nut' }), 'already-fitted', { piece: 'p6' }],
    ['on a tool', on('p7', { name: 'nut' }), 'not-for-home', { piece: 'p7' }],
    ['on what is not known', on('p99', { name: 'nut' }), 'unknown', {}],
    ['without a name', on('p1', { name: ' ' }), 'text-missing', { what: 'name' }],
    ['of no number', on('p1', { name: 'nut', count: 0.5 }), 'count-wrong', {}],
    ['more than belong there', on('p1', { name: 'nuts', count: 3, should: 2 }), 'count-wrong', {}],
    ['two at one position', on('p1', { name: 'jets', count: 2, positions: ['A', 'A'] }), 'count-wrong', {}],
    ['none at all', { do: 'carry', on: 'p1', items: [] }, 'text-missing', {}],
  ])('are refused %s', (_, command, code, facts) => {
    const job = ringed.and(
      strip('cover off', { hides: false }),
      off(1, 'cover'),
      toolOut('pin'),
      endStrip,
      begin(2),
      putOn('p6'),
    )
    job.when(command).refuses(code as 'unknown', facts)
  })
})

describe('a piece that goes home', () => {
  test('takes along what sits on it, and what sits on that', () => {
    const job = pump.and(on('p4', { name: 'washer' }), begin(1), putOn('p1'))
    expect(['p1', 'p3', 'p4', 'p5'].map((id) => where(job, id as PieceId))).toEqual([
      ['1 machine'],
      ['3 machine'],
      ['1 machine'],
      ['1 machine'],
    ])
    expect(where(job.and(putOn('p2'), done(1), reopen(1)), 'p3')).toEqual(['3 bench'])
  })

  test('takes along its share, where several alike carry as many each', () => {
    const job = given(
      off(4, 'plugs'),
      endStrip,
      on('p1', { name: 'washers', count: 8 }),
      begin(1),
      putOn('p1', undefined, 1),
    )
    expect(where(job, 'p2')).toEqual(['6 p1', '2 machine'])
    expect(where(job.and(putOn('p1')), 'p2')).toEqual(['8 machine'])
  })

  test('does not take along what is used, condemned or to be checked', () => {
    const used = ringed.and({ do: 'override', target: 'start 1', reason: 'to try the fit' }, begin(1))
    used.when(putOn('p1')).refuses('piece-used', { piece: 'p5' })
    const checked = pump.and(begin(1), {
      do: 'ask-checks',
      checks: [{ piece: 'p3', kind: 'look', what: ['stretched'] }],
    })
    checked.when(putOn('p1')).refuses('not-accepted', { piece: 'p3' })
  })

  test('and what sits on it may go home by itself, from where that lies', () => {
    expect(where(pump.and(begin(1), putOn('p3')), 'p3')).toEqual(['3 machine'])
    pump
      .and(move('p1', at('out')))
      .when(begin(1))
      .refuses('step-blocked', {
        reasons: [
          { code: 'piece-away', piece: 'p1', count: 1, place: 'out' },
          { code: 'piece-away', piece: 'p3', count: 3, place: 'p1' },
          { code: 'piece-away', piece: 'p4', count: 1, place: 'p1' },
        ],
      })
  })
})

describe('a piece that leaves for good', () => {
  test.each(['scrap', 'spare', 'supplier'] as const)('to %s does not take along what is owed', (place) => {
    pump.when(move('p1', at(place), because)).refuses('carries-owed', {
      piece: 'p1',
      riders: [
        { piece: 'p3', on: 'p1', count: 3 },
        { piece: 'p4', on: 'p1', count: 1 },
      ],
    })
  })

  test('takes along what is used', () => {
    const plug = given(
      off(1, 'plug'),
      endStrip,
      on('p1', { name: 'ring', singleUse: true }),
      move('p1', at('scrap')),
    )
    expect(where(plug, 'p2')).toEqual(['1 scrap'])
  })

  test('and what is lost is lost with all that sits on it', () => {
    expect(where(pump.and(lose('p1')), 'p3')).toEqual(['3 lost'])
  })
})

describe('over to the new one', () => {
  const replaced = pump.and(replace('p1', 1), alike('p5', { keep: true }))

  test('the new one does not go in while what is owed is on the old', () => {
    replaced.when(begin(1)).refuses('step-blocked', {
      reasons: [
        { code: 'left-on-old', piece: 'p3', count: 3, on: 'p1', to: 'p5' },
        { code: 'left-on-old', piece: 'p4', count: 1, on: 'p1', to: 'p5' },
      ],
    })
    replaced.and(over('p5', 'p1')).when(begin(1)).makes('build-began')
    replaced
      .and(move('p3', at('bench')), move('p4', at('bench')))
      .when(begin(1))
      .makes('build-began')
  })

  test('goes all that is owed, each as a move, or what is named', () => {
    replaced.when(over('p5', 'p1')).makes('moved', {
      moves: [
        { piece: 'p3', count: 3, from: 'p1', to: 'p5' },
        { piece: 'p4', count: 1, from: 'p1', to: 'p5' },
      ],
    })
    replaced.when(over('p5', 'p1', 'p4')).makes('moved', { moves: [{ piece: 'p4' }] })
    replaced
      .and(move('p3', at('bench')))
      .when(over('p5', undefined, 'p3'))
      .makes('moved', {
        moves: [{ piece: 'p3', count: 3, from: 'bench', to: 'p5' }],
      })
  })

  test('what is condemned stays, unless it is named', () => {
    const job = replaced.and({ do: 'judge', pieces: ['p3'], verdict: 'replace', reason: 'stretched' })
    job.when(over('p5', 'p1')).makes('moved', { moves: [{ piece: 'p4' }] })
  })

  test.each<[string, Command[], Command, string]>([
    ['to one that is not here', [move('p5', at('supplier'), because)], over('p5', 'p1'), 'not-within-reach'],
    ['of what is not on it', [], over('p5', 'p1', 'p2'), 'nothing-there'],
    ['when all went over', [over('p5', 'p1')], over('p5', 'p1'), 'nothing-there'],
    ['of nothing from nowhere', [], over('p5'), 'nothing-there'],
    [
      'to one that is on the machine',
      [over('p5', 'p1'), begin(1), putOn('p5')],
      over('p5', undefined, 'p2'),
      'already-fitted',
    ],
  ])('is refused %s', (_, before, command, code) => {
    replaced
      .and(...before)
      .when(command)
      .refuses(code as 'nothing-there')
  })

  test('is refused of what is used, and onto what it carries', () => {
    ringed.when(over('p1', 'p4', 'p5')).refuses('piece-used', { piece: 'p5' })
    ringed.when(over('p4', undefined, 'p1')).refuses('law', { violation: { law: 'carried-by-itself' } })
  })
})
