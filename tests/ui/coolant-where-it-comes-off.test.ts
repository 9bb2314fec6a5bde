import { expect, test } from 'vitest'
import { jobWith } from './support/bench.ts'

const onOff = () => {
  const job = jobWith('begin hoses off')
  job.enter('.1')
  return job
}

test('what came out is recorded where things come off, and not worked out', () => {
  const { enter, state, below, type } = onOff()
  type('coolant out 2.1 L')
  expect(below()).toContain('coolant')
  type('\r')
  enter('coolant hose: radiator > pump')
  expect([...state().fluids.values()]).toMatchObject([{ name: 'coolant', litresOut: 2.1 }])
  expect([...state().ledger.accounts.values()].map(({ piece }) => piece.name)).toContain('coolant hose')
})

test('a strength beside it is worked out as it is typed, and writes nothing', () => {
  const { type, below, entries, text } = onOff()
  const before = entries()
  type('coolant 10 L from 30 % to 50 %')
  expect(below()).toContain('Drain 2.86 L, refill with concentrate: 30 % becomes 50 %.')
  type('\r')
  expect(text()).toContain('WORKED OUT')
  expect(text()).toContain('10 L × (50 - 30) / (100 - 30) = 2.86 L')
  expect(entries()).toBe(before)
})

test('a timing drive as it is typed', () => {
  const { type, below, text } = onOff()
  type('teeth 24/48 off 1 late')
  expect(below()).toContain('The cam is 1 tooth late: move it 1 tooth forward in its chain or belt.')
  type('\r')
  expect(text()).toContain('Worked out, not a specification: the service manual decides.')
})
