import { expect, test } from 'vitest'
import { SHAPES } from '../machines/shapes.ts'
import { breakOff } from './break-off.ts'
import { addTo, emptyReport } from './report.ts'

const SMALL = SHAPES.filter(({ fasteners }) => fasteners <= 110)
const SEEDS = [1, 2]

/** Wherever work breaks off, nothing that was said to be recorded is lost, and what is named as next is next. */
test('jobs broken off again and again, by fixed seeds and a fresh one', () => {
  const fresh = Math.floor(Math.random() * 1e9)
  const all = emptyReport()
  for (const seed of [...SEEDS, fresh]) addTo(all, breakOff(seed, 24, SMALL))
  const { lost, broken, wrongNext, vague, stuck } = all
  expect({ lost, broken, wrongNext, vague, stuck }, `seed ${fresh}`).toEqual({
    lost: [],
    broken: [],
    wrongNext: [],
    vague: [],
    stuck: [],
  })
  expect(all.cleared).toBe(all.jobs)
  expect(all.interruptions).toBeGreaterThanOrEqual(24 * 3)
})
