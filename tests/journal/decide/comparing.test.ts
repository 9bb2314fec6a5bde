import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { placesOf } from '../../../src/ledger/ledger.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import type { ComparedFeature } from '../../../src/plan/judging/judging-facts.ts'
import {
  alike,
  at,
  begin,
  endStrip,
  lose,
  matchedOff,
  move,
  off,
  putOn,
  replace,
  supply,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const where = (job: ReturnType<typeof given>, piece: PieceId) =>
  placesOf(job.state.ledger, piece).map(({ place, count }) => `${count} ${place}`)
const due = (job: ReturnType<typeof given>) =>
  [...job.state.comparisons.values()].map(({ piece, old, verdict }) => `${piece} ${old} ${verdict}`)
const found = (piece: PieceId, ...features: ComparedFeature[]): Command => ({
  do: 'compare',
  piece,
  features,
})
const wrong: ComparedFeature = { feature: 'ports', how: 'wrong', says: 'turned' }
const fine: ComparedFeature = { feature: 'ports', how: 'alike' }

const pump = given(off(1, 'water pump', { kind: 'part' }), endStrip)

describe('a comparison is due', () => {
  test.each<[string, Command[], string[]]>([
    ['of a part whose old one lies in a bag', [], ['p2 p1 due']],
    ['of one whose old one is on the bench', [move('p1', at('bench'))], ['p2 p1 due']],
    ['of one whose old one is at a shop', [move('p1', at('out'))], ['p2 p1 due']],
    ['not where the old one is in scrap', [move('p1', at('scrap'))], []],
    ['not where it is lost', [lose('p1')], []],
    ['not where it was declared spare', [move('p1', at('spare'))], []],
  ])('%s', (_, before, comparisons) => {
    expect(due(pump.and(...before, replace('p1', 1)))).toEqual(comparisons)
  })

  test('not of fasteners: they go by their size', () => {
    expect(due(given(off(8, 'bolts'), endStrip, replace('p1', 8)))).toEqual([])
  })

  test('not of one more of the same, nor where none came off', () => {
    const short = given(off(1, 'spring', { kind: 'part', should: 2 }), endStrip)
    expect(due(short.and(supply('p1', 1)))).toEqual([])
    expect(due(given(off(0, 'spring', { kind: 'part', should: 1 }), endStrip, supply('p1', 1)))).toEqual([])
  })

  test('of each of a matched set that is replaced, beside its own', () => {
    const buckets = given(matchedOff(['E1', 'E2'], 'buckets'), endStrip)
    expect(due(buckets.and(replace('p2', 1), replace('p1', 1)))).toEqual(['p3 p2 due', 'p4 p1 due'])
  })

  test('by what the entry says: one of an older program says nothing of it', () => {
    const [entry] = pump.and(replace('p1', 1)).entries.slice(-1)
    expect(entry).toMatchObject({ type: 'supplied', compare: [{ piece: 'p2', old: 'p1' }] })
    const [plain] = pump.and(move('p1', at('scrap')), replace('p1', 1)).entries.slice(-1)
    expect(JSON.stringify(plain)).not.toContain('compare')
  })
})

describe('a new part that is not compared', () => {
  const job = pump.and(replace('p1', 1))

  test('holds up its step, and is not fitted in one under way', () => {
    job.when(begin(1)).refuses('step-blocked', { reasons: [{ code: 'compare-due', piece: 'p2', old: 'p1' }] })
    const underWay = pump.and(begin(1), replace('p1', 1))
    underWay.when(putOn('p2')).refuses('not-accepted', { piece: 'p2' })
  })

  test.each(['scrap', 'spare', 'supplier'] as const)('keeps the old one from going to %s', (place) => {
    job.when(move('p1', at(place))).refuses('not-compared', { piece: 'p1', fresh: 'p2' })
    job.when(move('p1', at(place), { reason: ' ' })).refuses('not-compared')
    job.when(move('p1', at(place), { reason: 'it fell apart' })).makes('moved')
  })

  test('lets the old one go from the bag to the bench, and out', () => {
    job.when(move('p1', at('bench'))).makes('moved')
    job.when(move('p1', at('out'))).makes('moved')
  })
})

describe('what is said of a new part', () => {
  const job = pump.and(replace('p1', 1))

  test('all alike sends the old one to scrap in the same entry', () => {
    const { state } = job.when(alike('p2')).makes('compared', { verdict: 'right', old: 'p1' })
    expect(state.comparisons.get('p2')?.verdict).toBe('right')
    expect(where(job.and(alike('p2')), 'p1')).toEqual(['1 scrap'])
    job.and(alike('p2'), begin(1), putOn('p2'))
  })

  test('the old one is kept where that is said, also once the new one is fitted', () => {
    expect(where(job.and(alike('p2', { keep: true }), begin(1), putOn('p2')), 'p1')).toEqual(['1 c1'])
  })

  test('what is away is not thrown away unseen', () => {
    expect(where(pump.and(move('p1', at('out')), replace('p1', 1), alike('p2')), 'p1')).toEqual(['1 out'])
  })

  test('features one by one end nothing: only the rest does', () => {
    const some = job.and(found('p2', fine), found('p2', { feature: 'studs', how: 'differs', says: 'longer' }))
    expect(some.state.comparisons.get('p2')).toMatchObject({ verdict: 'due', features: [{}, {}] })
    some.when(alike('p2')).makes('compared', { verdict: 'right' })
  })

  test('one wrong feature makes it the wrong one, whatever is said of the rest', () => {
    const bad = job.and(found('p2', wrong))
    bad.when(alike('p2')).makes('compared', { verdict: 'wrong', moves: [] })
    bad.when(begin(1)).refuses('step-blocked', { reasons: [{ code: 'compare-wrong' }] })
    bad.when(move('p1', at('scrap'))).refuses('not-compared')
  })

  test('a later word on a feature takes the place of an earlier one', () => {
    const { comparisons } = job.and(found('p2', wrong), found('p2', fine)).state
    expect(comparisons.get('p2')).toMatchObject({ verdict: 'due', features: [fine] })
  })

  test('a decision with its reason stands for it', () => {
    const decided = job.and({
      do: 'judge',
      pieces: ['p2'],
      verdict: 'fit-again',
      reason: 'measured by the drawing',
    })
    expect(decided.state.comparisons.get('p2')?.verdict).toBe('right')
    decided.when(move('p1', at('scrap'))).makes('moved')
  })

  test.each<[string, Command[], Command, string]>([
    ['of a piece with no old one', [], alike('p1'), 'nothing-to-compare'],
    ['of nothing', [], found('p2'), 'text-missing'],
    [
      'that all is wrong, without saying what',
      [],
      { ...alike('p2'), rest: 'wrong' } as Command,
      'text-missing',
    ],
    ['of one that is right already', [alike('p2')], alike('p2'), 'already'],
    ['of one that is not here', [move('p2', at('supplier'))], alike('p2'), 'not-within-reach'],
    ['of one that was replaced itself', [replace('p2', 1)], alike('p2'), 'not-for-home'],
  ])('is refused %s', (_, before, command, code) => {
    job
      .and(...before)
      .when(command)
      .refuses(code as 'already')
  })
})

describe('the wrong one', () => {
  const job = pump.and(replace('p1', 1), found('p2', wrong))

  test('gives its home to the next without being told to, which is held beside the same old one', () => {
    const next = job.and(move('p2', at('supplier'), { reason: 'wrong' }), supply('p2', 1))
    expect(due(next)).toEqual(['p2 p1 wrong', 'p3 p1 due'])
    expect(where(next.and(alike('p3')), 'p1')).toEqual(['1 scrap'])
  })

  test('one that was right and worn out is itself the old one of the next', () => {
    const worn = pump.and(replace('p1', 1), alike('p2'), replace('p2', 1))
    expect(due(worn)).toEqual(['p2 p1 right', 'p3 p2 due'])
  })

  test('counts on the line by which it came for as long as it is wrong', () => {
    const ordered = pump.and(
      { do: 'line-orders', lines: [{ piece: 'p1', name: 'water pump', count: 1 }], ordered: true },
      { do: 'judge', pieces: ['p1'], verdict: 'replace', reason: 'worn' },
      { do: 'receive', order: 'o1', into: at('bench') },
    )
    const line = (...commands: Command[]) => ordered.and(...commands).state.orders.get('o1')?.wrong
    expect(due(ordered)).toEqual(['p2 p1 due'])
    expect([line(), line(found('p2', wrong)), line(found('p2', wrong), found('p2', wrong))]).toEqual([
      0, 1, 1,
    ])
    expect(line(found('p2', wrong), found('p2', fine))).toBe(0)
  })
})
