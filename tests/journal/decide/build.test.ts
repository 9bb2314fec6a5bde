import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { balance, placesOf } from '../../../src/ledger/ledger.ts'
import {
  addStep,
  aidIn,
  alike,
  angle,
  at,
  begin,
  confirm,
  done,
  drain,
  endStrip,
  fail,
  look,
  lose,
  mark,
  matchedOff,
  move,
  newBag,
  off,
  override,
  putOn,
  putOnAll,
  reopen,
  replace,
  snug,
  stop,
  strip,
  supply,
  tightening,
  turn,
  turns,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const caps = given(
  strip('cams out'),
  matchedOff(['I1', 'I2'], 'cap'),
  off(4, 'bolts'),
  mark('arrow to the chain', 'p1'),
  endStrip,
)

describe('a piece goes home', () => {
  test.each<[string, Command, Record<string, unknown>]>([
    ['to its own position', putOn('p1', 'I1'), { step: 1, began: true }],
    ['all four bolts', putOn('p3'), { moves: [{ piece: 'p3', count: 4, from: 'c2', to: 'machine' }] }],
    ['one of them', putOn('p3', undefined, 1), { moves: [{ count: 1 }] }],
    [
      'a cap and its bolts',
      putOnAll(1, { piece: 'p1', position: 'I1' }, { piece: 'p3', count: 2 }),
      { step: 1 },
    ],
  ])('%s', (_, command, facts) => {
    caps.when(command).makes('fitted', facts)
  })

  test('from bench, bags and spares, what is nearest to hand first', () => {
    const spread = caps.and(
      move('p3', at('spare'), { count: 1 }),
      move('p3', newBag, { count: 1, from: 'c2' }),
      move('p3', at('bench'), { count: 1, from: 'c2' }),
    )
    const { entries } = spread.when(putOn('p3')).makes('fitted')
    const entry = entries.at(-1)
    expect(entry?.type === 'fitted' && entry.moves.map(({ from }) => from)).toEqual([
      'bench',
      'c2',
      'c3',
      'spare',
    ])
  })

  test.each<[string, Command, string, Record<string, unknown>]>([
    [
      'to its neighbour’s position',
      putOn('p1', 'I2'),
      'law',
      { violation: { law: 'not-its-position', own: 'I1', tried: 'I2' } },
    ],
    ['its position not said', putOn('p1'), 'law', { violation: { law: 'position-not-said', own: 'I1' } }],
    [
      'two caps in one go',
      putOnAll(1, { piece: 'p1', position: 'I1' }, { piece: 'p2', position: 'I2' }),
      'one-by-one',
      {},
    ],
    ['nothing', putOnAll(1), 'no-build-step', {}],
    ['what nobody knows', putOn('p9'), 'unknown', {}],
    ['no bolts', putOn('p3', undefined, 0), 'count-wrong', {}],
    ['five bolts of four', putOn('p3', undefined, 5), 'not-within-reach', { wanted: 5, there: 4 }],
    [
      'the same bolts twice',
      putOnAll(1, { piece: 'p3' }, { piece: 'p3' }),
      'law',
      { violation: { law: 'more-than-there' } },
    ],
    ['in another step', putOnAll(2, { piece: 'p3' }), 'not-in-step', { own: 1 }],
  ])('refused: %s', (_, command, code, facts) => {
    caps.when(command).refuses(code as 'law', facts)
  })

  test('the wrong place is said first, though the step is not ready either', () => {
    const blocked = caps.and(lose('p3', 1))
    blocked.when(putOn('p1', 'I2')).refuses('law')
    blocked.when(putOn('p1', 'I1')).refuses('step-blocked', { gate: 'start' })
  })

  test('a fifth bolt home, though one too many was bought', () => {
    const surplus = caps.and(supply('p3', 1), putOn('p3'))
    surplus.when(putOn('p3')).refuses('law', { violation: expect.objectContaining({ law: 'home-full' }) })
    surplus
      .and(move('p3', at('scrap')))
      .when(putOn('p3'))
      .refuses('home-already')
  })

  test('what was replaced, left off or is an aid has no home', () => {
    const job = caps.and(
      replace('p3', 4),
      { do: 'leave-off', piece: 'p2', reason: 'blanked off' },
      aidIn('rag'),
    )
    job.when(putOn('p3')).refuses('law', { violation: { law: 'home-full', should: 0 } })
    job.when(putOn('p2', 'I2')).refuses('law', { violation: { law: 'home-full', should: 0 } })
    job.when(putOn('p5')).refuses('not-for-home')
    job
      .and(move('p3', at('scrap')))
      .when(putOn('p3'))
      .refuses('not-for-home')
  })

  test('bolts at the machine shop are not within reach', () => {
    caps
      .and(begin(1), move('p3', at('out'), { count: 2 }))
      .when(putOn('p3'))
      .refuses('not-within-reach', { wanted: 4, there: 2 })
  })

  test('not into a step that is closed', () => {
    caps.and(putOn('p1', 'I1'), override('finish 1'), done(1)).when(putOn('p3')).refuses('step-done')
  })
})

describe('a step is taken up and closed', () => {
  const bolts = given(off(2, 'bolts'), endStrip)

  test('taken up once, and not again when done', () => {
    bolts.when(begin(1)).makes('build-began')
    bolts.and(begin(1)).when(begin(1)).refuses('step-under-way')
    bolts.and(putOn('p1'), done(1)).when(begin(1)).refuses('step-done')
    bolts.when(begin(9)).refuses('unknown')
  })

  test('closed when nothing is owed in it', () => {
    bolts.when(done()).refuses('no-build-step')
    bolts.and(begin(1)).when(done()).refuses('step-blocked', { gate: 'finish' })
    bolts.and(putOn('p1')).when(done()).makes('build-done', { step: 1 })
    bolts.and(putOn('p1'), done()).when(done(1)).refuses('step-done')
  })

  test('of two under way, the one worked in last is the one that is closed without being named', () => {
    const two = given(strip('a'), off(2, 'bolts'), strip('b', { after: [] }), off(2, 'nuts'), endStrip)
    const both = two.and(begin(1), begin(2), putOn('p1'))
    expect(both.state.build).toBe(1)
    both.when(done()).makes('build-done', { step: 1 })
  })

  test('a check is closed at once, with what was found', () => {
    given(addStep('measure end float', { kind: 'measure' }))
      .when(done(1, ' 0.2 mm '))
      .makes('build-done', { result: '0.2 mm' })
  })

  test('a strip step with nothing to put back may be closed too, and reopened never', () => {
    const idle = given(strip('look inside'), endStrip)
    idle.when(done(1)).makes('build-done')
    idle.when(reopen(1)).refuses('nothing-to-reopen')
  })
})

describe('a mark', () => {
  test('is confirmed when its piece is home, and names where that lies until then', () => {
    caps.when(confirm('m1')).refuses('step-not-begun')
    caps
      .and(begin(1))
      .when(confirm('m1'))
      .refuses('step-blocked', {
        reasons: [{ code: 'not-home', piece: 'p1', count: 1, place: 'c1' }],
      })
    caps.and(putOn('p1', 'I1')).when(confirm('m1')).makes('confirmed')
    caps.and(putOn('p1', 'I1'), confirm('m1')).when(confirm('m1')).refuses('already')
    caps.when(confirm('m9')).refuses('unknown', { what: 'mark' })
  })

  test('of a replaced piece is confirmed on the one that took its home', () => {
    const job = caps.and(replace('p1', 1), alike('p4'), begin(1))
    job.when(confirm('m1')).refuses('step-blocked', {
      reasons: [{ code: 'not-home', piece: 'p4', count: 1, place: 'bench' }],
    })
    job.and(putOn('p4', 'I1')).when(confirm('m1')).makes('confirmed')
  })
})

describe('the last look', () => {
  const apart = given(
    strip('valve cover off'),
    off(1, 'cover'),
    strip('cams out'),
    off(2, 'caps'),
    aidIn('rag'),
    endStrip,
  )
  const camsIn = [putOn('p2'), move('p3', at('toolbox')), done(2)]

  test.each<[string, Command[], string[]]>([
    ['with everything out', [], ['aid-in', 'not-home', 'step-before']],
    ['with the rag left in', [putOn('p2')], ['aid-in', 'step-before']],
    ['with the step not closed', camsIn.slice(0, 2), ['step-before']],
  ])('is refused %s', (_, commands, codes) => {
    const refusal = apart
      .and(...commands)
      .when(look(1))
      .refuses('step-blocked', { gate: 'look' })
    expect(refusal.code === 'step-blocked' && refusal.reasons.map(({ code }) => code)).toEqual(codes)
  })

  test('is taken once, before the step is closed', () => {
    const ready = apart.and(...camsIn)
    ready.when(putOn('p1')).refuses('step-blocked', { reasons: [{ code: 'look-due', step: 1 }] })
    ready.when(look(1)).makes('looked')
    ready.and(look(1)).when(look(1)).refuses('already')
    ready.and(look(1), putOn('p1'), done(1)).when(look(1)).refuses('step-done')
  })

  test('sees through steps with nothing to put back', () => {
    const job = given(
      strip('valve cover off'),
      off(1, 'cover'),
      strip('look inside'),
      strip('cams out'),
      off(2, 'caps'),
      endStrip,
    )
    job.when(look(1)).refuses('step-blocked', {
      reasons: [
        { code: 'not-home', place: 'c2' },
        { code: 'step-before', step: 3 },
      ],
    })
  })

  test('beneath a start that was passed over asks only for what lies there', () => {
    const passed = apart.and(override('start 1'))
    const refusal = passed.when(look(1)).refuses('step-blocked')
    expect(refusal.code === 'step-blocked' && refusal.reasons.map(({ code }) => code)).toEqual([
      'aid-in',
      'not-home',
    ])
  })
})

describe('reopening', () => {
  const built = given(
    strip('bracket off'),
    off(2, 'bracket bolts'),
    strip('chain out'),
    off(1, 'chain'),
    endStrip,
    putOn('p2'),
    done(2),
    putOn('p1'),
    done(1),
    addStep('turn by hand', { needs: [1] }),
    done(3),
  )

  test('takes everything on top with it, and brings the pieces to the bench', () => {
    const { entries } = built.when(reopen(2)).makes('reopened', { steps: [1, 2, 3] })
    const entry = entries.at(-1)
    expect(entry?.type === 'reopened' && entry.moves).toEqual([
      { piece: 'p1', count: 2, from: 'machine', to: 'bench' },
      { piece: 'p2', count: 1, from: 'machine', to: 'bench' },
    ])
  })

  test('a half-fitted step gives back what was fitted', () => {
    const half = built.and(reopen(1), putOn('p1', undefined, 1))
    const again = half.when(reopen(1)).makes('reopened')
    expect(placesOf(again.state.ledger, 'p1')).toEqual([{ piece: 'p1', place: 'bench', count: 2 }])
  })

  test('a failed step whose pieces are still on comes off with the one beneath it', () => {
    const failed = built.and(fail(1))
    expect(balance(failed.state.ledger, 'p1', 'machine')).toBe(2)
    const { state } = failed.when(reopen(2)).makes('reopened', { steps: [1, 2, 3] })
    expect(balance(state.ledger, 'p1', 'machine')).toBe(0)
  })

  test('aids stay where they are', () => {
    const { state } = built.and(reopen(1), begin(1), aidIn('rag')).when(reopen(1)).makes('reopened')
    expect(balance(state.ledger, 'p3', 'machine')).toBe(1)
  })

  test('refused: what nobody knows, what is not built, no reason', () => {
    built.when(reopen(9)).refuses('unknown')
    built.and(reopen(2)).when(reopen(1)).refuses('nothing-to-reopen')
    built.when({ do: 'reopen', steps: [2], reason: ' ' }).refuses('text-missing')
    built.when({ do: 'reopen', steps: [], reason: 'x' }).refuses('nothing-to-reopen')
  })
})

describe('a check that fails', () => {
  const built = given(
    strip('chain out'),
    off(1, 'chain'),
    endStrip,
    putOn('p1'),
    done(1),
    addStep('turn by hand', { needs: [1] }),
  )

  test('reopens the steps that are pointed at, and is to be done again itself', () => {
    const { state } = built.when(fail(2, 1)).makes('failed', { steps: [1] })
    expect([...state.steps.values()].map((step) => step.built)).toEqual(['redo', 'redo'])
    expect(balance(state.ledger, 'p1', 'bench')).toBe(1)
  })

  test('pointing at none is only to be done again', () => {
    const { state } = built.when(fail(2)).makes('failed', { steps: [], moves: [] })
    expect([...state.steps.values()].map((step) => step.built)).toEqual(['done', 'redo'])
  })

  test('refused: before it can be done, pointing at nothing built, with no result', () => {
    built.and(reopen(1)).when(fail(2)).refuses('step-blocked')
    built.when(fail(2, 2)).refuses('nothing-to-reopen')
    built.when(fail(2, 9)).refuses('unknown')
    built.when({ do: 'fail', step: 2, result: '', steps: [] }).refuses('text-missing')
  })
})

describe('an override', () => {
  const short = given(
    off(2, 'bolts', { found: 1 }),
    mark('dot'),
    drain('oil'),
    tightening('p1', [snug]),
    endStrip,
  )

  test.each<[string, Command[], Command, string[]]>([
    ['of a start', [], override('start 1'), ['piece-short']],
    [
      'of a finish',
      [override('start 1'), begin(1)],
      override('finish 1'),
      ['not-home', 'piece-short', 'mark-open', 'tighten-open', 'fluid-open'],
    ],
    ['of a mark', [], override('m1'), ['mark-open']],
    ['of a tightening', [], override('t1'), ['tighten-open']],
    ['of a fluid', [], override('f1'), ['fluid-open']],
    ['of a check', [addStep('leaks')], override('check 2'), ['check-open']],
    [
      'of a last look, with what it hides',
      [strip('valve cover off', { after: [] }), strip('ports', { after: [2] }), aidIn('rag'), endStrip],
      override('look 2'),
      ['aid-in', 'look-due'],
    ],
    [
      'of a fault',
      [off(2, 'studs', { broken: { kind: 'snapped', count: 1 } })],
      override('x1'),
      ['fault-open'],
    ],
  ])('%s keeps what it passed over', (_, commands, command, gates) => {
    short
      .and(...commands)
      .when(command)
      .makes('overridden', { gates })
  })

  test.each<[string, Command[], Command, string]>([
    ['twice for the same', [override('start 1')], override('start 1'), 'nothing-to-override'],
    ['of a gate that is open', [supply('p1', 1)], override('start 1'), 'nothing-to-override'],
    ['of a look that nobody asks for', [], override('look 1'), 'nothing-to-override'],
    ['of a check that is a strip step', [], override('check 1'), 'nothing-to-override'],
    [
      'of the start of a step under way',
      [override('start 1'), begin(1)],
      override('start 1'),
      'step-under-way',
    ],
    ['of what nobody knows: a step', [], override('start 9'), 'unknown'],
    ['a mark', [], override('m9'), 'unknown'],
    ['a fluid', [], override('f9'), 'unknown'],
    ['a tightening', [], override('t9'), 'unknown'],
    ['a fault', [], override('x9'), 'unknown'],
    ['without a reason', [], override('start 1', ' '), 'text-missing'],
  ])('refused: %s', (_, commands, command, code) => {
    short
      .and(...commands)
      .when(command)
      .refuses(code as 'law')
  })

  test('is given again for what came since, and both reasons are kept', () => {
    const again = short
      .and(override('start 1', 'the bolt is on its way'))
      .and({ do: 'count', container: 1, counts: [{ piece: 'p1', counted: 0 }] })
      .and(override('start 1', 'seen on the bench'))
    expect(again.state.overrides.get('start 1')).toBe('the bolt is on its way; seen on the bench')
    again.when(begin(1)).makes('build-began')
  })

  test('never of a bolt in doubt, not by an earlier one either', () => {
    const bolts = given(off(3, 'bolts'), tightening('p1', [angle(90)]), endStrip, putOn('p1'), turn())
    bolts.and(stop()).when(override('t1')).refuses('angle-suspect', { fastener: '2' })
    const waived = bolts.and(override('t1'), stop())
    waived
      .and(override('finish 1'), done(1))
      .when({ do: 'clear' })
      .refuses('not-clear', {
        leftovers: [{ code: 'tighten-open', tightening: 't1' }],
      })
  })

  test('of a step that is done is refused', () => {
    given(off(1, 'bolt'), endStrip, putOn('p1'), done(1)).when(override('finish 1')).refuses('step-done')
    given(off(1, 'bolt'), tightening('p1', [snug]), endStrip, putOn('p1'), ...turns(1), done(1))
      .when(override('t1'))
      .refuses('nothing-to-override')
  })
})

test('a measurement is not done without its reading', () => {
  const job = given(addStep('measure the clearances', { kind: 'measure' }))
  job.when(done(1)).refuses('text-missing', { what: 'result' })
  job.when(done(1, '0.14 mm')).makes('build-done')
})
