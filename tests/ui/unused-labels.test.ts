import { expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { jobWith } from './support/bench.ts'

test('an unused label scanned where things come off is in hand at once, and becomes a bag with the first piece', () => {
  const { desk, type, session } = atTheBench()
  type(`.1\r${labelCode(1, 2)}\r`)
  expect(desk.screen).toEqual({ at: 'off' })
  expect(session().state.containers.has(2)).toBe(false)
  type('8 M6x25 hex 10 cover bolts\r')
  expect(session().state.containers.get(2)).toMatchObject({ kind: 'bag', no: 2 })
  expect([...(session().state.ledger.accounts.get('p1')?.at ?? [])]).toEqual([['c2', 8]])
})

test('behind the words of what came off it takes that in, in one go', () => {
  const { desk, type, session } = atTheBench()
  type(`.1\r8 M6x25 hex 10 cover bolts${labelCode(1, 3)}\r`)
  expect([...(session().state.ledger.accounts.get('p1')?.at ?? [])]).toEqual([['c3', 8]])
  expect(desk.typed()).toEqual({ before: '', after: '' })
})

test('behind words that say nothing of what came off it is a scan, and the words stay', () => {
  const { desk, type, session } = atTheBench()
  type(`.1\rbegin ${labelCode(1, 3)}\r`)
  expect(desk.screen.at).toBe('scan')
  expect(desk.typed().before).toBe('begin ')
  expect(session().state.ledger.accounts.size).toBe(0)
})

test('elsewhere it says what it is, and Enter takes it in hand', () => {
  const { desk, type, rows } = atTheBench()
  type(`.2\r${labelCode(1, 2)}\r`)
  expect(rows().join('\n')).toContain('UNUSED')
  type('\r')
  expect(desk.screen).toEqual({ at: 'off' })
})

test('a void label is not taken in hand', () => {
  const { desk, type, session } = atTheBench()
  type('void 3 because sheet torn\r')
  type(`.1\r8 M6x25 cover bolts${labelCode(1, 3)}\r`)
  expect(desk.screen).toEqual({ at: 'scan', text: labelCode(1, 3) })
  expect(session().state.ledger.accounts.size).toBe(0)
})

function atTheBench() {
  const bench = jobWith('begin cover off')
  const { desk } = bench
  const { session } = desk
  if (!session) throw new Error('no job is open')
  if (session.send({ do: 'deal-labels', count: 4 }).kind !== 'recorded') throw new Error('not dealt')
  return { ...bench, session: () => session }
}
