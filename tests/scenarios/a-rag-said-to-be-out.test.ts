import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { workshop } from './workshop.ts'

const name = 'a-rag-said-to-be-out.txt'
const job = readFileSync(join(import.meta.dirname, name), 'utf8')

test('the round names what is to be seen in the toolbox, and how it is said that one is not there', () => {
  const said = new Map<string, string[][]>()
  const run = workshop().run(job, name, (result, line) => {
    const text = result.ok ? result.text : [result.told.what, ...result.told.lines, result.told.cure]
    said.set(line, [...(said.get(line) ?? []), text])
  })
  expect(run.failure).toBeNull()
  const rounds = said.get('take 3') ?? []
  expect(rounds.map((text) => text.slice(-2))).toEqual(
    [1, 2].map(() => [
      '      toolbox: see in it 2 × rags at inlet port 1 and 1 × magnet',
      '      One not in it: "move 1 p3 from toolbox to machine because ...".',
    ]),
  )
  expect(said.get('refused not-clear: clear')?.[0]).toEqual([
    'Not cleared: 3 things are not as they must be at the first start.',
    '1 × rag at inlet port 1 is still in the machine, put in during step 1, valve cover. To reach it, undo: step 1.',
    '1 × magnet is not back in the toolbox, on the bench.',
    'Step 3, Tip out every bag and tray, look round the bench: reopened, to be done again.',
    'Begin with the first: "reopen 1 because ..." opens step 1, then "take out p3" when out.',
  ])
})
