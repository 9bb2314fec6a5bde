import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { workshop } from './workshop.ts'

interface FinishAnswer {
  schedule: { finish: number; chains: (number | string)[][] }
  hands: number
  ready: number[]
  free: number[]
  steps: { step: number; waits: { by: string | null; isLate: boolean }[] }[]
}

test('what is estimated while the alternator is out, and while it is late; and what can be done meanwhile', () => {
  const name = 'a-seal-that-sets.txt'
  const told: unknown[] = []
  const run = workshop().run(readFileSync(join(import.meta.dirname, name), 'utf8'), name, (result, line) => {
    if (!result.ok || line !== 'finish') return
    const { schedule, hands, ready, free, steps } = result.answer as FinishAnswer
    const waits = steps.flatMap(({ step, waits }) => waits.map(({ by, isLate }) => [step, by, isLate]))
    told.push({ finish: schedule.finish, chains: schedule.chains, hands, ready, free, waits })
  })
  expect(run.failure).toBeNull()
  // Step 1 guard, 10 min; 2 alternator, 25 min; 3 water pump, 40 min, then 16 h for the sealant; 4 thermostat, 30 min.
  expect(told).toEqual([
    { finish: 1000, chains: [[3, 's1']], hands: 105, ready: [4, 3], free: [], waits: [[2, 'b1', false]] },
    { finish: 40, chains: [[4, 1]], hands: 65, ready: [4], free: [], waits: [[2, 'b1', true]] },
  ])
})
