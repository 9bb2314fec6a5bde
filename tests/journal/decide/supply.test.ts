import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { placesOf } from '../../../src/ledger/ledger.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import {
  aidIn,
  at,
  bag,
  begin,
  done,
  endStrip,
  lose,
  matchedOff,
  move,
  newBag,
  off,
  putOn,
  reopen,
  replace,
  slot,
  strip,
  supply,
  toolOut,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const where = (job: ReturnType<typeof given>, piece: PieceId = 'p1') =>
  placesOf(job.state.ledger, piece).map(({ place, count }) => `${count} ${place}`)
const because = 'because it is so'

describe('a move', () => {
  const bolts = given(off(6, 'bolts'), endStrip)

  test.each<[string, Command[], string[]]>([
    ['all there are', [move('p1', at('bench'))], ['6 bench']],
    ['two of them', [move('p1', at('bench'), { count: 2 })], ['4 c1', '2 bench']],
    ['into a new bag', [move('p1', newBag, { count: 2 })], ['4 c1', '2 c2']],
    [
      'from the place that is named',
      [move('p1', at('bench'), { count: 2 }), move('p1', at('out'), { count: 1, from: 'bench' })],
      ['4 c1', '1 bench', '1 out'],
    ],
    ['to the machine shop and back', [move('p1', at('out')), move('p1', at('bench'))], ['6 bench']],
    [
      'lost, and found again',
      [lose('p1', 1), move('p1', at('bench'), { from: 'lost' })],
      ['5 c1', '1 bench'],
    ],
    [
      'scrapped, and out of the scrap with a reason',
      [move('p1', at('scrap')), move('p1', at('bench'), { reason: because })],
      ['6 bench'],
    ],
    [
      'what is lost or scrapped stays there unless it is named',
      [lose('p1', 2), move('p1', at('bench'))],
      ['2 lost', '4 bench'],
    ],
  ])('%s', (_, commands, places) => {
    expect(where(bolts.and(...commands))).toEqual(places)
  })

  test.each<[string, Command[], Command, string, object]>([
    ['home: that is the business of a step', [], move('p1', at('machine')), 'through-a-step', { step: 1 }],
    [
      'more than there are',
      [],
      move('p1', at('bench'), { count: 7 }),
      'not-within-reach',
      { wanted: 7, there: 6 },
    ],
    ['none', [], move('p1', at('bench'), { count: 0 }), 'count-wrong', {}],
    ['from where there are none', [], move('p1', at('bench'), { from: 'out' }), 'nothing-there', {}],
    ['to where they are', [], move('p1', bag(1)), 'nothing-there', {}],
    [
      'all of two places, and how many is not said',
      [move('p1', at('bench'), { count: 2 })],
      move('p1', at('out')),
      'which-place',
      {},
    ],
    ['lost, without a reason', [], move('p1', at('lost')), 'text-missing', {}],
    [
      'out of the scrap, without a reason',
      [move('p1', at('scrap'))],
      move('p1', at('bench')),
      'text-missing',
      {},
    ],
    [
      'seven of six, the seventh from the scrap',
      [supply('p1', 1, at('scrap'))],
      move('p1', at('bench'), { count: 7, reason: because }),
      'not-within-reach',
      { wanted: 7, there: 6 },
    ],
    ['off the machine', [putOn('p1')], move('p1', at('bench')), 'nothing-there', {}],
    ['what nobody knows', [], move('p9', at('bench')), 'unknown', {}],
    ['into a bag nobody opened', [], move('p1', bag(9)), 'unknown', {}],
    ['into a slot of a bag', [], move('p1', slot(1, 2)), 'no-such-slot', {}],
  ])('refused: %s', (_, commands, command, code, facts) => {
    bolts
      .and(...commands)
      .when(command)
      .refuses(code as 'law', { ...facts })
  })

  test('an aid goes into the machine and out again, as often as it is needed; a tool does not', () => {
    const aids = given(aidIn('rag'), toolOut('magnet'))
    const again = aids.and(move('p1', at('toolbox')), move('p1', at('machine')), move('p1', at('toolbox')))
    expect(where(again)).toEqual(['1 toolbox'])
    aids.when(move('p2', at('machine'))).refuses('through-a-step')
  })
})

describe('new pieces', () => {
  const short = given(off(6, 'bolts', { found: 5 }), endStrip)

  test('for a short home are the same piece', () => {
    expect(where(short.and(supply('p1', 1)))).toEqual(['5 c1', '1 bench'])
  })

  test('ordered and not here yet stay at the supplier', () => {
    const ordered = short.and(supply('p1', 1, at('supplier')))
    expect(where(ordered)).toEqual(['5 c1', '1 supplier'])
    ordered.when(putOn('p1')).refuses('not-within-reach', { wanted: 6, there: 5 })
    ordered.when(begin(1)).refuses('step-blocked', { reasons: [{ code: 'piece-away', place: 'supplier' }] })
    ordered
      .and(move('p1', at('bench'), { from: 'supplier' }))
      .when(putOn('p1'))
      .makes('fitted')
  })

  test('instead of the old ones take their home, and the old ones have none', () => {
    const job = short.and({ ...replace('p1', 6), size: 'M6x30' } as Command)
    expect(job.state.ledger.accounts.get('p2')).toMatchObject({
      should: 6,
      piece: { replaces: 'p1', size: 'M6x30' },
    })
    expect(job.state.ledger.accounts.get('p1')?.should).toBe(0)
    job.and(putOn('p2')).when(done(1)).makes('build-done')
  })

  test('for used single-use ones are successors without being told so', () => {
    const gasket = given(off(1, 'gasket', { singleUse: true }), endStrip)
    gasket.when(putOn('p1')).refuses('piece-used')
    const fresh = gasket.and(supply('p1', 1))
    expect(fresh.state.ledger.accounts.get('p2')?.piece.replaces).toBe('p1')
    fresh.and(putOn('p2'), done(1), reopen(1)).when(putOn('p2')).refuses('piece-used')
  })

  test('for a matched piece that is lost, scrapped or was never there: one home, one piece', () => {
    const cap = (more: object, ...commands: Command[]) =>
      given(matchedOff(['I1'], 'cap', more), endStrip, ...commands)
    const lost = cap({}, lose('p1')).and(supply('p1', 1))
    expect([...lost.state.ledger.accounts.keys()]).toEqual(['p1', 'p2'])
    const broken = cap({ broken: { kind: 'broken', count: 1 } }).and(supply('p1', 1))
    expect([...broken.state.ledger.accounts.keys()]).toEqual(['p1', 'p2'])
    const missing = cap({ found: 0 }).and(supply('p1', 1))
    expect([...missing.state.ledger.accounts.keys()]).toEqual(['p1'])
    missing.when(supply('p1', 1)).refuses('one-by-one')
    lost
      .and(move('p1', at('bench'), { from: 'lost' }))
      .when(putOn('p1', 'I1'))
      .refuses('law', {
        violation: { law: 'home-full', should: 0 },
      })
  })

  test.each<[string, Command, string]>([
    ['none', supply('p1', 0), 'count-wrong'],
    ['of what nobody knows', supply('p9', 1), 'unknown'],
    ['of an aid', supply('p2', 1), 'not-for-home'],
    ['straight onto the machine', supply('p1', 1, at('machine')), 'through-a-step'],
    ['instead, straight onto the machine', replace('p1', 6, at('machine')), 'through-a-step'],
    ['of a second cap for one home', supply('p3', 1), 'one-by-one'],
    ['of two caps for one home', replace('p3', 2), 'count-wrong'],
    ['into a bag nobody opened', supply('p1', 1, bag(9)), 'unknown'],
  ])('refused: %s', (_, command, code) => {
    short
      .and(aidIn('rag'), matchedOff(['I1'], 'cap'), endStrip)
      .when(command)
      .refuses(code as 'law')
  })

  test('not instead of what is on the machine, or has no home', () => {
    short
      .and(supply('p1', 1), putOn('p1', undefined, 1))
      .when(replace('p1', 6))
      .refuses('already-fitted')
    short.and(replace('p1', 6)).when(replace('p1', 6)).refuses('not-for-home')
    short.and(replace('p1', 6)).when(supply('p1', 1)).refuses('not-for-home')
  })
})

describe('decisions', () => {
  const leaveOff = (count?: number, piece: PieceId = 'p1'): Command => ({
    do: 'leave-off',
    piece,
    count,
    reason: because,
  })
  const bolts = given(off(3, 'bolts'), aidIn('rag'), endStrip)

  test('what is left off is owed no more, and lies about until it is put away', () => {
    const job = bolts.and(leaveOff(1), putOn('p1'), move('p2', at('toolbox')), done(1))
    job
      .when({ do: 'clear' })
      .refuses('not-clear', { leftovers: [{ code: 'old-lying', piece: 'p1', count: 1 }] })
    job
      .and(move('p1', at('spare')))
      .when({ do: 'clear' })
      .makes('cleared')
    expect(bolts.and(leaveOff()).state.ledger.accounts.get('p1')?.should).toBe(0)
  })

  test.each<[string, Command[], Command, string]>([
    ['more than is owed', [], leaveOff(4), 'too-many-left-off'],
    ['none', [], leaveOff(0), 'count-wrong'],
    ['what is home', [move('p2', at('toolbox')), putOn('p1')], leaveOff(), 'too-many-left-off'],
    ['an aid that is in the machine', [], leaveOff(undefined, 'p2'), 'too-many-left-off'],
    ['without a reason', [], { ...leaveOff(1), reason: '' } as Command, 'text-missing'],
    ['what nobody knows', [], leaveOff(1, 'p9'), 'unknown'],
  ])('not to be left off: %s', (_, commands, command, code) => {
    bolts
      .and(...commands)
      .when(command)
      .refuses(code as 'law')
  })

  test('what is lost is given up by name, and no more of it than is lost', () => {
    const giveUp: Command = { do: 'accept-lost', piece: 'p1', reason: because }
    bolts.when(giveUp).refuses('not-lost')
    bolts.and(lose('p1', 2)).when(giveUp).makes('decided', { count: 2 })
    bolts.and(lose('p1', 2), giveUp).when(giveUp).refuses('not-lost')
    bolts
      .and(lose('p1', 1))
      .when({ ...giveUp, reason: ' ' } as Command)
      .refuses('text-missing')
  })

  test('a used piece goes back only by a decision, once', () => {
    const again: Command = { do: 'use-again', piece: 'p1', reason: 'measured, and not stretched' }
    const job = given(off(2, 'rod bolts', { singleUse: true }), endStrip)
    job.and(again).when(putOn('p1')).makes('fitted')
    job.and(again).when(again).refuses('not-single-use')
    job.and(again, putOn('p1'), reopen(1)).when(putOn('p1')).refuses('piece-used')
    given(off(2, 'bolts')).when(again).refuses('not-single-use')
  })

  test('a fault is settled once, in words', () => {
    const settle: Command = { do: 'settle-fault', fault: 'x1', how: 'drilled out, insert fitted' }
    const job = given(off(2, 'studs', { broken: { kind: 'snapped', count: 1 } }))
    job.when(settle).makes('settled')
    job.and(settle).when(settle).refuses('already')
    job.when({ ...settle, how: '' } as Command).refuses('text-missing')
    given().when(settle).refuses('unknown')
  })
})

describe('homes are changed by a decision alone', () => {
  const caps = given(
    strip('cams out'),
    matchedOff(['I1', 'I2', 'I3'], 'cap'),
    matchedOff(['I1'], 'bucket'),
    off(2, 'bolts'),
    endStrip,
  )
  const rehome = (...homes: [PieceId, string][]): Command => ({
    do: 'rehome',
    homes: homes.map(([piece, position]) => ({ piece, position })),
    reason: 'shims measured and swapped',
  })

  test('two change with each other, three in a ring, and each then goes only to its new one', () => {
    caps.when(rehome(['p1', 'I1'], ['p1', 'I1'])).refuses('home-taken')
    const swapped = caps.and(rehome(['p1', 'I2'], ['p2', 'I1']))
    swapped.when(putOn('p1', 'I2')).makes('fitted')
    swapped.when(putOn('p1', 'I1')).refuses('law', { violation: { law: 'not-its-position', own: 'I2' } })
    caps.when(rehome(['p1', 'I2'], ['p2', 'I3'], ['p3', 'I1'])).makes('rehomed')
  })

  test.each<[string, Command[], Command, string, object]>([
    ['a home that is taken', [], rehome(['p1', 'I2']), 'home-taken', { piece: 'p2' }],
    ['two to the same', [], rehome(['p1', 'I3'], ['p2', 'I3']), 'home-taken', {}],
    [
      'a position that the set has not',
      [],
      rehome(['p1', 'E4']),
      'no-such-position',
      { known: ['I1', 'I2', 'I3'] },
    ],
    ['what is no mate', [], rehome(['p4', 'I2']), 'no-such-position', {}],
    ['a common bolt', [], rehome(['p5', 'I1']), 'not-matched', {}],
    [
      'one that is on the machine',
      [putOn('p1', 'I1')],
      rehome(['p1', 'I2'], ['p2', 'I1']),
      'already-fitted',
      {},
    ],
    ['what nobody knows', [], rehome(['p9', 'I1']), 'unknown', {}],
    ['none', [], rehome(), 'text-missing', {}],
    [
      'without a reason',
      [],
      { ...rehome(['p1', 'I2'], ['p2', 'I1']), reason: '' } as Command,
      'text-missing',
      {},
    ],
  ])('refused: %s', (_, commands, command, code, facts) => {
    caps
      .and(...commands)
      .when(command)
      .refuses(code as 'law', { ...facts })
  })

  test('the end of a hose gets the name that it should have had, and goes there alone', () => {
    const hose = matchedOff(['tnak', 'rail'], 'fuel hose', { kind: 'connection' })
    const job = given(strip('fuel hose off'), hose, endStrip)
    const right = job.and(rehome(['p1', 'fuel tank']))
    right.when(putOn('p1', 'fuel tank')).makes('fitted')
    right
      .when(putOn('p1', 'tnak'))
      .refuses('law', { violation: { law: 'not-its-position', own: 'fuel tank' } })
    job.when(rehome(['p1', 'rail'])).refuses('home-taken', { piece: 'p2' })
    job.when(rehome(['p1', ' '])).refuses('no-such-position')
  })

  test('a piece that was replaced holds no home any more', () => {
    caps
      .and(replace('p1', 1))
      .when(rehome(['p6', 'I2'], ['p2', 'I1']))
      .makes('rehomed')
  })

  test('a home stays in its step: a mate that came off in another step has none to give', () => {
    const job = given(
      strip('pump off'),
      matchedOff(['1'], 'long bolt', { at: 'pump' }),
      strip('pump bracket off'),
      matchedOff(['2'], 'long bolt', { at: 'pump' }),
      endStrip,
    )
    job.when(rehome(['p1', '2'], ['p2', '1'])).refuses('no-such-position', { known: ['1'] })
  })
})
