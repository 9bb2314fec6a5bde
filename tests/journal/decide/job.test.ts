import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import {
  addStep,
  aidIn,
  angle,
  at,
  begin,
  clear,
  done,
  endStrip,
  firstStart,
  lose,
  mark,
  move,
  off,
  putOn,
  redo,
  reopen,
  settleAngle,
  stop,
  strip,
  tightening,
  turn,
  undo,
} from '../../support/commands.ts'
import { given, givenNothing, openJob } from '../../support/journal.ts'

const close = (note?: string): Command => ({ do: 'close-job', note })

describe('a job', () => {
  test('is opened once, before anything else', () => {
    givenNothing().when(openJob).makes('opened')
    givenNothing().when(off(1, 'bolt')).refuses('no-job', { command: 'take-off' })
    given().when(openJob).refuses('job-open-already')
  })

  test.each<[string, object, string]>([
    ['no name', { name: ' ' }, 'text-missing'],
    ['number 0', { no: 0 }, 'count-wrong'],
    ['number 1000', { no: 1000 }, 'count-wrong'],
    ['half a number', { no: 1.5 }, 'count-wrong'],
  ])('refused: %s', (_, more, code) => {
    givenNothing()
      .when({ ...openJob, ...more } as Command)
      .refuses(code as 'law')
  })

  test('is described anew, put away and taken out', () => {
    const job = given({ do: 'describe', name: 'red twin', units: 'us' }, { do: 'archive', archived: true })
    expect(job.state.job).toMatchObject({
      name: 'red twin',
      machine: 'the blue twin, top end',
      units: 'us',
      archived: true,
    })
    const again = job.and({ do: 'describe', machine: 'the red twin' })
    expect(again.state.job).toMatchObject({ name: 'red twin', machine: 'the red twin', units: 'us' })
    job.when({ do: 'archive', archived: true }).refuses('already')
    job.when({ do: 'describe', name: ' ' }).refuses('text-missing')
  })
})

describe('the card of a stop', () => {
  test('says in which step work stopped, and goes with the next piece of work', () => {
    const stopped = given(off(2, 'bolts'), endStrip, begin(1), stop())
    expect(stopped.state.card).toMatchObject({ step: 1, note: 'bolts half down', abrupt: false })
    expect(stopped.and({ do: 'archive', archived: true }).state.card).not.toBeNull()
    expect(stopped.and(putOn('p1')).state.card).toBeNull()
  })

  test('names the strip step where none is being built', () => {
    expect(given(strip('cover off'), stop()).state.card?.step).toBe(1)
    expect(given(stop()).state.card?.step).toBeNull()
  })
})

describe('the first start', () => {
  const home = given(
    off(2, 'bolts'),
    endStrip,
    putOn('p1'),
    done(1),
    addStep('leaks', { way: 'after-start' }),
  )

  test('is cleared once, and started once, in this order', () => {
    home.when(firstStart).refuses('not-cleared')
    home.and(clear).when(clear).refuses('already')
    home.and(clear).when(firstStart).makes('started')
    home.and(clear, firstStart).when(firstStart).refuses('already')
  })

  test.each<[string, Command[], string]>([
    ['a rag', [aidIn('rag')], 'aid-in'],
    ['a mark', [mark('dot')], 'mark-open'],
    ['a reopened step', [reopen(1)], 'piece-off'],
    ['a step still coming off', [strip('cover off')], 'step-open'],
    [
      'a lost bolt, though a new one is in',
      [
        reopen(1),
        lose('p1', 1),
        { do: 'supply', piece: 'p1', count: 1, into: at('bench'), instead: false },
        putOn('p1'),
        done(1),
      ],
      'piece-lost',
    ],
  ])('is not cleared over %s, which is named first', (_, commands, code) => {
    const refusal = home
      .and(...commands)
      .when(clear)
      .refuses('not-clear')
    expect(refusal.code === 'not-clear' && refusal.leftovers[0]?.code).toBe(code)
  })

  test('needs a new clearance when something was touched after it', () => {
    home.and(clear, aidIn('rag')).when(firstStart).refuses('not-cleared')
    home
      .and(clear, aidIn('rag'), move('p2', at('toolbox')), endStrip, done(3))
      .when(clear)
      .makes('cleared')
  })
})

describe('a job is closed', () => {
  const running = given(
    off(2, 'bolts'),
    endStrip,
    putOn('p1'),
    done(1),
    addStep('leaks', { way: 'after-start' }),
    clear,
    firstStart,
  )

  test('when it has run and its checks are done, or handed over in words', () => {
    given().when(close()).refuses('not-started')
    running.when(close()).refuses('checks-open', { steps: [2] })
    running.and(done(2, 'dry')).when(close()).makes('closed')
    running.when(close('the owner looks after 50 km')).makes('closed')
    running
      .and({ do: 'override', target: 'check 2', reason: 'no coolant in it' })
      .when(close())
      .makes('closed')
  })

  test('never with something off the machine again', () => {
    running
      .and(reopen(1))
      .when(close('done'))
      .refuses('not-clear', { leftovers: [{ code: 'piece-off' }, { code: 'step-open' }] })
    running.and(reopen(1), putOn('p1'), done(1)).when(close('done')).makes('closed')
  })

  test.each<[string, Command, boolean]>([
    ['a bolt comes off', off(1, 'bolt'), false],
    ['a step is reopened', reopen(1), false],
    ['a note is made', { do: 'note', kind: 'note', text: 'sold' }, true],
    ['it is put away', { do: 'archive', archived: true }, true],
    ['it gets another name', { do: 'describe', name: 'old twin' }, true],
    ['the closing is taken back', undo, true],
  ])('then %s: %s', (_, command, works) => {
    const closed = running.and(done(2), close())
    if (works) closed.and(command)
    else closed.when(command).refuses('job-closed')
  })
})

describe('taking back', () => {
  test('never the opening of the job', () => {
    given().when(undo).refuses('nothing-to-undo')
    given(off(1, 'bolt'), undo).when(undo).refuses('nothing-to-undo')
    given().when(redo).refuses('nothing-to-redo')
  })
})

test('undo does not lift the doubt about a bolt: it goes by an answer', () => {
  const job = given(off(4, 'bolts'), endStrip, tightening('p1', [angle(90)]), putOn('p1'), turn(), stop(true))
  expect(job.state.tightenings.get('t1')?.suspect).toEqual({ pass: 0, fastener: '2' })
  job.when(undo).refuses('angle-suspect')
  job.and(settleAngle(false)).when(undo).makes('undone')
})
