import { expect, test } from 'vitest'
import { cardOf } from '../../src/session/views.ts'
import { emptyHome, jobWith, say, shelfIn } from '../ui/support/bench.ts'

test('of two steps that were taken up, the other goes on when one is done', () => {
  const { desk } = jobWith(
    'begin guard off free, does not hide',
    'off guard into bench',
    'begin pump off free, does not hide',
    'off pump into bench',
    'end',
    'take 1',
    'take 2',
    'fit pump',
    'done 2',
  )
  if (!desk.session) throw new Error('no job is open')
  desk.session.refresh()
  expect(cardOf(desk.session).next).toMatchObject({ kind: 'todo', step: 1, todo: { kind: 'fit' } })
})

/** The card of a job that was told so, while its work goes on. */
function cardAfter(...lines: string[]) {
  const shelf = shelfIn(emptyHome())
  const session = shelf.open(shelf.create({ name: 'blue twin', machine: '', units: 'metric' }))
  say(session, ...lines)
  return cardOf(session)
}

test('of two steps that were taken up, lines without a number go to the one that is left', () => {
  const two = [
    'begin guard off free, does not hide',
    'off guard into bench',
    'off 2 M6x20 guard bolts into bench',
    'begin pump off free, does not hide',
    'off pump into bench',
    'end',
    'tighten guard bolts: 10 Nm',
    'take 1',
    'fit guard',
    'fit guard bolts',
    'take 2',
    'fit pump',
    'done',
  ]
  expect(cardAfter(...two, 'turn')).toMatchObject({
    build: 1,
    next: { kind: 'todo', step: 1, todo: { kind: 'turn', next: { fastener: '2' } } },
  })
  expect(cardAfter(...two, 'turn', 'stop')).toMatchObject({ stopped: { step: 1 } })
})

test('bolts that are half way come before anything else in their step', () => {
  const lines = [
    'begin pump off, does not hide',
    'off pump into bench',
    'off 2 M6x20 pump bolts into bench',
    'off rag > inlet',
    'end',
    'tighten pump bolts: 10 Nm, 20 Nm',
    'take 1',
    'fit pump bolts',
  ]
  expect(cardAfter(...lines).next).toMatchObject({ todo: { kind: 'take-out' } })
  expect(cardAfter(...lines, 'turn').next).toMatchObject({ todo: { kind: 'turn', next: { fastener: '2' } } })
  expect(cardAfter(...lines, 'turn', 'turn').next).toMatchObject({
    todo: { kind: 'turn', next: { fastener: '1', pass: 1 } },
  })
})

test('of two joints, the one that is half way is turned on, also by a line that names none', () => {
  const lines = [
    'begin pump off, does not hide',
    'off 2 M6x20 inlet bolts into bench',
    'off 2 M8x30 outlet bolts into bench',
    'end',
    'tighten inlet bolts: 10 Nm',
    'tighten outlet bolts: 25 Nm',
    'take 1',
    'fit inlet bolts',
    'fit outlet bolts',
    'turn 1 of t2',
  ]
  expect(cardAfter(...lines).next).toMatchObject({
    todo: { tightening: { id: 't2' }, next: { fastener: '2' } },
  })
  expect(cardAfter(...lines, 'turn').next).toMatchObject({ todo: { tightening: { id: 't1' } } })
})

test('a rag that keeps a step from its last look is the next thing, not that the step is blocked', () => {
  const lines = [
    'begin cover off, hides',
    'off cover into bench',
    'begin pump off, does not hide',
    'off pump into bench',
    'off rag > inlet',
    'end',
    'take 2',
    'fit pump',
    'override finish 2 because the rag stays until the cover',
    'done 2',
  ]
  expect(cardAfter(...lines).next).toMatchObject({
    kind: 'todo',
    step: 1,
    todo: { kind: 'take-out', count: 1 },
  })
  expect(cardAfter(...lines, 'take out rag').next).toEqual({ kind: 'look', step: 1 })
})

test('what is looked at once more before it is closed is named so', () => {
  const lines = [
    'begin cover off, hides',
    'off cover into bench',
    'begin pump off, does not hide',
    'off pump into bench',
    'off plug > inlet',
    'end',
    'take 2',
    'fit pump',
    'take out plug',
    'done 2',
    'look 1',
    'take 1',
    'fit cover',
  ]
  expect(cardAfter(...lines).next).toEqual({ kind: 'close', step: 1 })
  const again = [...lines, 'off rag > outlet', 'take out rag']
  expect(cardAfter(...again).next).toEqual({ kind: 'look', step: 1 })
})

test('what is eased next stands on the card of a step that comes off', () => {
  expect(
    cardAfter('begin head off', 'loosen head bolts 2x2: 1/2 turn, free order 4,1,3,2', 'turn').next,
  ).toMatchObject({ kind: 'strip', step: 1, ease: { next: { fastener: '1', pass: 0, through: 1 } } })
})
