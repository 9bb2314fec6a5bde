import { expect, test } from 'vitest'
import { triggersFor } from '../../../src/plan/judging/findings.ts'
import { begin, off } from '../../errors/commands.ts'
import { listed } from '../../errors/judging-commands.ts'
import { given } from '../../support/journal.ts'

const item = { do: 'replace', piece: 'p1' } as const
const { state } = given(
  begin('Pump off'),
  off(1, 'oil pump', { kind: 'part' }),
  listed('metal in the oil', item),
  listed('scored bearings', item),
  listed('Coolant', item),
)

test.each([
  ['metal in the oil', ['h1']],
  ['oil full of metal', ['h1']],
  ['Fine METAL, in the oil!', ['h1']],
  ['metal', []],
  ['metal in the coolant', ['h3']],
  ['a scored bearing', ['h2']],
  ['bearings scored, metal in oil', ['h1', 'h2']],
  ['metallic oil', []],
  ['', []],
])('%j opens %j', (finding, lists) => {
  expect(triggersFor(state, finding).map(({ id }) => id)).toEqual(lists)
})

test('words that say nothing open nothing', () => {
  const told = given(begin('Pump off'), off(1, 'oil pump', { kind: 'part' }), listed('in the', item))
  expect(triggersFor(told.state, 'in the oil')).toEqual([])
})
