import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { benchWithJob } from '../cli/support/bench.ts'

const strip = ['begin pump cover off', 'off 4 M6x25 pump cover bolts into new bag bolts', 'end']

test('the command line answers with the record, in words and as facts, and writes nothing', async () => {
  const { send, home } = benchWithJob(...strip)
  const journal = () => readFileSync(join(home, 'blue-twin', 'journal.log'), 'utf8')
  const before = journal()
  const { code, out, err } = await send('record')
  expect([code, err]).toEqual([0, ''])
  expect(out.split('\n')[0]).toBe('AS-BUILT RECORD')
  expect(out).toContain('came off: 4 × pump cover bolts M6x25, into bag 1')
  expect(out).toMatch(/label \d{3} \d{4} \d\d/)
  const facts = await send('--json', 'record')
  expect(JSON.parse(facts.out)).toMatchObject({
    ok: true,
    answer: { job: { name: 'blue twin' }, steps: [{ row: { step: { no: 1 } } }] },
  })
  expect(journal()).toBe(before)
})
