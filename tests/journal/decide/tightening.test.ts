import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { nextTurn } from '../../../src/plan/tightening.ts'
import {
  addStep,
  aidIn,
  angle,
  begin,
  done,
  endStrip,
  lose,
  matchedOff,
  missed,
  off,
  override,
  putOn,
  redo,
  reopen,
  replace,
  settleAngle,
  snug,
  stop,
  strip,
  tightening,
  torque,
  turn,
  turns,
  undo,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const stages = [torque(20), torque(40), angle(90)]
const crosswise = ['2', '3', '1', '4']
const slacken: Command = { do: 'slacken', tightening: 't1', reason: 'wrong washers' }
/** Four head bolts in a square, home, with nothing turned yet. */
const bolts = given(off(4, 'rod bolts'), endStrip, tightening('p1', stages, crosswise), putOn('p1'))
const next = (job: typeof bolts) => {
  const tightening = job.state.tightenings.get('t1')
  return tightening && nextTurn(tightening)
}

describe('the pattern', () => {
  test.each<[string, Command[], Command, string[]]>([
    ['common bolts by number', [off(3, 'bolts')], tightening('p1', stages), ['1', '2', '3']],
    [
      'in the order that was given',
      [off(3, 'bolts')],
      tightening('p1', stages, ['2', '1', '3']),
      ['2', '1', '3'],
    ],
    [
      'by the names of their places',
      [off(2, 'bolts', { alikeAt: ['left', 'right'] })],
      tightening('p1', stages),
      ['left', 'right'],
    ],
    ['a set by its positions', [matchedOff(['I1', 'I2'], 'cap')], tightening('p2', stages), ['I1', 'I2']],
    ['one matched bolt', [matchedOff(['4'], 'long bolt')], tightening('p1', stages), ['4']],
  ])('%s', (_, commands, command, order) => {
    const { state } = given(...commands)
      .when(command)
      .makes('tightening-set')
    expect(state.tightenings.get('t1')?.order).toEqual(order)
  })

  test.each<[string, Command, string, object]>([
    ['no passes', tightening('p1', []), 'text-missing', {}],
    ['21 passes', tightening('p1', Array(21).fill(snug)), 'count-wrong', {}],
    ['no torque', tightening('p1', [torque(0)]), 'count-wrong', {}],
    ['an angle that is no number', tightening('p1', [angle(Number.NaN)]), 'count-wrong', {}],
    [
      'one left out, one twice, one that is not there',
      tightening('p1', stages, ['1', '2', '2', '9']),
      'order-wrong',
      { missing: ['3', '4'], unknown: ['9'], twice: ['2'] },
    ],
    ['of what nobody knows', tightening('p9', stages), 'unknown', {}],
    ['of a rag', tightening('p2', stages), 'not-for-home', {}],
  ])('refused: %s', (_, command, code, facts) => {
    given(off(4, 'bolts'), aidIn('rag'))
      .when(command)
      .refuses(code as 'law', { ...facts })
  })

  test('is set anew until the first turn, and after all are backed off', () => {
    const anew = bolts.and(tightening('p1', [snug]))
    expect([...anew.state.tightenings.keys()]).toEqual(['t1'])
    bolts
      .and(turn())
      .when(tightening('p1', [snug]))
      .refuses('tightening-begun')
    bolts
      .and(turn(), slacken)
      .when(tightening('p1', [snug]))
      .makes('tightening-set')
  })

  test('of a set is one pattern, whichever of the set is named', () => {
    const caps = given(matchedOff(['I1', 'I2'], 'cap'), tightening('p1', stages), tightening('p2', [snug]))
    expect([...caps.state.tightenings.values()].map(({ id, passes }) => [id, passes.length])).toEqual([
      ['t1', 1],
    ])
  })

  test('goes on with the bolts that take the place of the old ones', () => {
    const job = given(off(2, 'bolts'), endStrip, tightening('p1', [snug]), replace('p1', 2), begin(1))
    job.when(turn()).refuses('step-blocked', { reasons: [{ code: 'not-home', piece: 'p2', count: 2 }] })
    job.and(putOn('p2')).when(turn()).makes('tightened')
    const anew = job.and(tightening('p2', stages))
    expect([...anew.state.tightenings.keys()]).toEqual(['t1'])
  })
})

describe('one bolt after the other', () => {
  test('pass by pass, each in its order', () => {
    const turned = turns(12).reduce<[typeof bolts, string[]]>(
      ([job, told], command) => {
        const { state, entries } = job.when(command).makes('tightened')
        const entry = entries.at(-1)
        const name = entry?.type === 'tightened' ? `${entry.pass}:${entry.fastener}` : ''
        expect(state.seq).toBe(entries.length)
        return [job.and(command), [...told, name]]
      },
      [bolts, []],
    )[1]
    expect(turned).toEqual([0, 1, 2].flatMap((pass) => crosswise.map((name) => `${pass}:${name}`)))
  })

  test.each<[string, Command[], Command, string, object]>([
    ['out of its turn', [turn()], turn('1'), 'out-of-turn', { next: '3' }],
    ['through this pass already', [turn()], turn('2'), 'turned-already', { next: '3' }],
    ['not in the pattern', [], turn('9'), 'no-such-fastener', {}],
    ['when all are through', turns(12), turn(), 'no-tightening', {}],
    ['when all are through, by its number', turns(12), { do: 'tighten', tightening: 't1' }, 'all-turned', {}],
    ['of a pattern nobody knows', [], { do: 'tighten', tightening: 't9' }, 'unknown', {}],
    ['with the step closed', [...turns(12), done(1)], { do: 'tighten', tightening: 't1' }, 'step-done', {}],
    ['with no step under way', [reopen(1)], turn(), 'no-tightening', { step: null }],
    [
      'with no step under way, by its number',
      [reopen(1)],
      { do: 'tighten', tightening: 't1' },
      'step-not-begun',
      {},
    ],
  ])('refused: %s', (_, commands, command, code, facts) => {
    bolts
      .and(...commands)
      .when(command)
      .refuses(code as 'law', { ...facts })
  })

  test('not before all of them are home', () => {
    const three = given(off(4, 'bolts'), endStrip, tightening('p1', stages), putOn('p1', undefined, 3))
    three
      .when(turn())
      .refuses('step-blocked', { reasons: [{ code: 'not-home', piece: 'p1', count: 1, place: 'c1' }] })
    three
      .and(lose('p1', 1))
      .when(turn())
      .refuses('step-blocked', {
        reasons: [{ code: 'piece-short', piece: 'p1', should: 4, have: 3 }],
      })
  })

  test('of a set: not before the last of the set is home', () => {
    const caps = given(matchedOff(['I1', 'I2'], 'cap'), endStrip, tightening('p1', [snug]), putOn('p1', 'I1'))
    caps
      .when(turn())
      .refuses('step-blocked', { reasons: [{ code: 'not-home', piece: 'p2', count: 1, place: 'c1' }] })
    caps.and(putOn('p2', 'I2')).when(turn('I1')).makes('tightened')
    const others = given(
      matchedOff(['I1', 'I2'], 'cap'),
      matchedOff(['E1', 'E2'], 'cap'),
      off(2, 'bolts'),
      endStrip,
      tightening('p1', [snug]),
      putOn('p1', 'I1'),
      putOn('p2', 'I2'),
    )
    others.when(turn('I1')).makes('tightened')
  })
})

describe('work is broken off', () => {
  // Every cell of the grid of 3 passes and 4 bolts, with a word and without.
  const cells = Array.from({ length: 13 }, (_, done) => done).flatMap((done) => [
    [done, false] as const,
    [done, true] as const,
  ])

  test.each(cells)('after %i turns, without a word: %s, the right bolt is next', (done, abrupt) => {
    const stopped = bolts.and(...turns(done), stop(abrupt))
    if (done === 12) {
      expect(next(stopped)).toBeNull()
      return
    }
    const [pass, bolt] = [Math.floor(done / 4), done % 4]
    const isAngle = pass === 2
    const doubt = isAngle && (bolt > 0 || abrupt)
    const fastener = crosswise[isAngle ? bolt : 0]
    expect(next(stopped)).toMatchObject({ pass, fastener, suspect: doubt })
    if (!doubt) {
      stopped.when(turn(fastener)).makes('tightened', { pass, fastener })
      return
    }
    stopped.when(turn()).refuses('angle-suspect', { fastener })
    stopped.when(turn(fastener)).refuses('angle-suspect', { fastener })
    stopped.when({ do: 'close-step' }).refuses('step-blocked')
    const wasTurned = stopped.and(settleAngle(true))
    const following = bolt === 3 ? null : { pass, fastener: crosswise[bolt + 1], suspect: false }
    if (following) expect(next(wasTurned)).toMatchObject(following)
    else expect(next(wasTurned)).toBeNull()
    expect(next(stopped.and(settleAngle(false)))).toMatchObject({ pass, fastener, suspect: false })
  })

  test('a doubt is settled with a reason, and only where there is one', () => {
    bolts.when(settleAngle(true)).refuses('not-suspect')
    const doubt = bolts.and(...turns(9), stop())
    doubt.when({ do: 'settle-angle', tightening: 't1', turned: true, reason: ' ' }).refuses('text-missing')
    doubt.when({ do: 'settle-angle', tightening: 't9', turned: true, reason: 'x' }).refuses('unknown')
    doubt.when(settleAngle(true)).makes('angle-settled', { fastener: '3', turned: true })
  })

  test('a doubt is not forgotten by setting the passes anew', () => {
    const one = given(off(2, 'bolts'), tightening('p1', [angle(90)]), endStrip, putOn('p1'), stop(true))
    one.when(tightening('p1', [snug])).refuses('tightening-begun')
  })

  test('no bolt is in doubt that cannot have been turned: the step is not under way', () => {
    const bag = given(off(2, 'bolts'), tightening('p1', [angle(90)]), endStrip, stop(true))
    expect(bag.state.tightenings.get('t1')?.suspect).toBeNull()
  })

  test('nor one of a step that was closed with bolts waved through', () => {
    const closed = bolts.and(...turns(9), override('t1'), done(1), stop(true))
    expect(closed.state.tightenings.get('t1')?.suspect).toBeNull()
    expect(closed.state.overrides.has('t1')).toBe(true)
  })

  test('a stop that is taken back leaves the ticks as they were', () => {
    const again = bolts.and(...turns(2), stop(), undo)
    expect(next(again)).toMatchObject({ pass: 0, fastener: '1' })
    expect(next(again.and(redo))).toMatchObject({ pass: 0, fastener: '2' })
  })
})

describe('all are backed off', () => {
  test('and every pass is to be done again, doubt or not', () => {
    expect(next(bolts.and(...turns(9), stop(), slacken))).toEqual({
      pass: 0,
      fastener: '2',
      through: 0,
      suspect: false,
    })
  })

  test.each<[string, Command[], Command, string]>([
    ['before the step is taken up', [reopen(1)], slacken, 'step-not-begun'],
    ['when the step is done', [...turns(12), done(1)], slacken, 'step-done'],
    ['of what nobody knows', [], { ...slacken, tightening: 't9' } as Command, 'unknown'],
    ['without a reason', [], { ...slacken, reason: '' } as Command, 'text-missing'],
  ])('refused: %s', (_, commands, command, code) => {
    bolts
      .and(...commands)
      .when(command)
      .refuses(code as 'law')
  })
})

describe('a bolt never comes to its torque', () => {
  const settle: Command = { do: 'settle-fault', fault: 'x1', how: 'thread insert fitted' }
  // Two torques and the first bolt's angle are through; then the second bolt keeps turning.
  const failed = bolts.and(...turns(9), missed())

  test('is a fault of the bolt that is next, or of the one that is named', () => {
    bolts
      .and(turn())
      .when(missed())
      .makes('torque-missed', { fastener: '3', fault: { kind: 'no-torque', piece: 'p1' } })
    bolts.and(turn()).when(missed('4')).makes('torque-missed', { fastener: '4' })
    bolts
      .and(...turns(12))
      .when({ ...missed('4'), tightening: 't1' } as Command)
      .makes('torque-missed')
  })

  test('nothing is turned on while it stands, and the step is not closed', () => {
    failed.when(turn()).refuses('fastener-faulty', { fastener: '3', fault: 'x1' })
    failed.when(missed('4')).refuses('fastener-faulty', { fault: 'x1' })
    failed.when(done(1)).refuses('step-blocked')
    failed
      .and(override('t1'))
      .when(done(1))
      .refuses('step-blocked', { reasons: [{ code: 'fault-open', fault: 'x1' }] })
  })

  test('put right, it goes through every pass again, before the others go on', () => {
    const brought = failed.and(settle)
    const told: string[] = []
    let job = brought
    for (let at = next(job); at; at = next(job)) {
      told.push(`${at.pass}:${at.fastener}`)
      job = job.and(turn())
    }
    expect(told).toEqual(['0:3', '1:3', '2:3', '2:1', '2:4'])
  })

  test('passed over knowingly, the others go on', () => {
    failed.and(override('x1')).when(turn()).makes('tightened', { pass: 0, fastener: '3' })
  })

  test('takes back what was waved through, and with an undo it never was', () => {
    const waved = bolts.and(...turns(9), override('t1'))
    expect(waved.and(missed()).state.overrides.has('t1')).toBe(false)
    const undone = waved.and(missed(), undo)
    expect(undone.state.overrides.has('t1')).toBe(true)
    expect(undone.state.faults.size).toBe(0)
    expect(next(undone)).toMatchObject({ pass: 2, fastener: '3' })
  })

  test('an open doubt about another bolt stays, and is settled first', () => {
    const doubt = bolts.and(...turns(9), stop(), missed('4'), settle)
    doubt.when(turn()).refuses('angle-suspect', { fastener: '3' })
    expect(next(doubt.and(settleAngle(true)))).toMatchObject({ pass: 0, fastener: '4' })
  })

  test('a break while it is brought up to the others takes no tick of one that is through its angle', () => {
    const broken = failed.and(settle, turn(), stop(true))
    expect(next(broken)).toMatchObject({ pass: 1, fastener: '3' })
    expect(broken.state.tightenings.get('t1')?.done.map(({ size }) => size)).toEqual([4, 1, 1])
    expect(broken.state.tightenings.get('t1')?.done[1]).toEqual(new Set(['2']))
  })

  test('among several lots the fault is of the lot that lies there', () => {
    const lots = given(
      off(2, 'flange bolts', { size: 'M6x25', alikeAt: ['1', '3'] }),
      off(1, 'flange bolts', { size: 'M6x40', alikeAt: ['2'] }),
      endStrip,
      { do: 'set-tightening', piece: 'p1', with: ['p2'], passes: [torque(20)] },
      putOn('p1'),
      putOn('p2'),
    )
    lots.when(missed('2')).makes('torque-missed', { fault: { piece: 'p2' } })
  })

  test.each<[string, Command[], Command, string]>([
    ['of a bolt that is not there', [], missed('9'), 'no-such-fastener'],
    ['without what was seen', [], { do: 'miss-torque', says: ' ' }, 'text-missing'],
    ['when all are through', turns(12), missed(), 'no-tightening'],
    [
      'when all are through, by its number',
      turns(12),
      { ...missed(), tightening: 't1' } as Command,
      'all-turned',
    ],
    [
      'in a step that is not under way',
      [reopen(1)],
      { ...missed(), tightening: 't1' } as Command,
      'step-not-begun',
    ],
    ['of what nobody knows', [], { ...missed(), tightening: 't9' } as Command, 'unknown'],
  ])('refused: %s', (_, commands, command, code) => {
    bolts
      .and(...commands)
      .when(command)
      .refuses(code as 'law')
  })
})

describe('the threads and the wrench', () => {
  const wrench = (more: object): Command => ({
    do: 'choose-wrench',
    tightening: 't1',
    wrench: { typed: 'long one', ...more },
  })

  test('are said whenever they are known', () => {
    const { state } = bolts.and(
      turn(),
      { do: 'say-condition', tightening: 't1', condition: 'oiled' },
      wrench({ leverMm: 400 }),
    )
    expect(state.tightenings.get('t1')).toMatchObject({ condition: 'oiled', wrench: { leverMm: 400 } })
  })

  test.each<[string, Command, string]>([
    ['a lever of none', wrench({ leverMm: 0 }), 'count-wrong'],
    ['an adapter shorter than none', wrench({ adapterMm: -1 }), 'count-wrong'],
    ['a range that is no number', wrench({ mostNewtonMetres: Number.NaN }), 'count-wrong'],
    ['a wrench without a word', wrench({ typed: '' }), 'text-missing'],
    ['threads without a word', { do: 'say-condition', tightening: 't1', condition: ' ' }, 'text-missing'],
    ['of what nobody knows', { do: 'say-condition', tightening: 't9', condition: 'dry' }, 'unknown'],
  ])('refused: %s', (_, command, code) => {
    bolts.when(command).refuses(code as 'law')
  })
})

test('the step is not closed before every bolt is through, unless that is passed over', () => {
  bolts
    .and(...turns(11))
    .when(done(1))
    .refuses('step-blocked', { reasons: [{ code: 'tighten-open' }] })
  bolts
    .and(...turns(12))
    .when(done(1))
    .makes('build-done')
  bolts
    .and(...turns(3), override('t1'))
    .when(done(1))
    .makes('build-done')
})

test('a bolt that comes off again is turned from the first pass', () => {
  const job = given(
    strip('rods out'),
    off(2, 'bolts'),
    tightening('p1', [torque(20)]),
    endStrip,
    putOn('p1'),
    ...turns(2),
    done(1),
  )
  const again = job.and(addStep('turn by hand', { needs: [1] }), reopen(1), putOn('p1'))
  again.when(turn()).makes('tightened', { pass: 0, fastener: '1' })
})

test('two sets of one name at two places are tightened apart', () => {
  const { state } = given(
    matchedOff(['1', '2'], 'cap', { at: 'inlet' }),
    matchedOff(['1', '2'], 'cap', { at: 'exhaust' }),
    tightening('p1', stages),
    tightening('p3', stages),
  )
  expect([...state.tightenings.values()].map(({ piece, order }) => ({ piece, order }))).toEqual([
    { piece: 'p1', order: ['1', '2'] },
    { piece: 'p3', order: ['1', '2'] },
  ])
})
