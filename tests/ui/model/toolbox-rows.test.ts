import { expect, test } from 'vitest'
import { jobWith } from '../support/bench.ts'

const job = [
  'begin lever off, does not hide',
  'off 4 M6x20 hex 8 lever bolts into new bag',
  'off 2 rags > inlet port 1',
  'tool: magnet',
  'end',
  'accept all',
  'take 1',
  'fit lever bolts',
]

test('the last round has the toolbox looked into, once something is said to be in it', () => {
  const out = jobWith(...job)
  out.enter('step 2')
  expect(out.text()).not.toContain('LOOK INTO THE TOOLBOX')
  const { enter, rows, text, line, state, desk } = jobWith(...job, 'take out rags', 'return magnet', 'done')
  enter('step 2')
  expect(text()).toContain('LOOK INTO THE TOOLBOX')
  expect(rows()).toContain('     · see in it 2 × rags at inlet port 1 and 1 × magnet')
  enter('take 2', 'step 2')
  expect(rows()).toContain('LOOK INTO THE TOOLBOX: ONE NOT THERE, ITS NUMBER')
  expect(rows()).toContain('  2  2 × rags at inlet port 1')
  expect(rows()).toContain('  3  1 × magnet')
  enter('2')
  expect(line()).toBe('move 1 p2 from toolbox to machine because |')
  enter('1')
  expect(desk.session?.entries().at(-1)).toMatchObject({ reason: 'it is not in the toolbox' })
  expect(state().ledger.accounts.get('p2')?.at.get('machine')).toBe(1)
})
