import { expect, test } from 'vitest'
import { cardOf } from '../../src/session/views.ts'
import { jobWith } from '../ui/support/bench.ts'

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
