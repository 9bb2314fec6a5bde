import { randomInt } from 'node:crypto'
import { expect, test } from 'vitest'
import type { EntryType } from '../../src/journal/entry.ts'
import { type RunTally, runSequences } from './run-sequences.ts'

// Random jobs on the core and on the naive model side by side: every law is held after every command, and the
// trial balance is compared line by line. What is held is written in run-sequences.ts; a million commands are given by
// `npm run bench:mistakes`.

/** In milliseconds, on a machine that has other things to do: nothing is said about speed. */
const MOST = 120_000

const tallies: RunTally[] = []

test.each([1, 20_301, 4_242_424])(
  '300 random jobs from seed %i',
  (seed) => {
    const tally = runSequences(300, seed)
    tallies.push(tally)
    expect(tally.sequences).toBe(300)
  },
  MOST,
)

test(
  '100 random jobs from a fresh seed',
  () => {
    const seed = randomInt(2 ** 31)
    process.stdout.write(`random jobs from the fresh seed ${seed}\n`)
    expect(runSequences(100, seed).sequences).toBe(100)
  },
  MOST,
)

// A workload that never gets anywhere would hold every law as well.
test('the jobs from the fixed seeds went everywhere', () => {
  const written = new Set(tallies.flatMap((tally) => [...tally.written.keys()]))
  expect([...written].sort()).toEqual(Object.keys(everyEntryType).sort())
  const refused = new Set(tallies.flatMap((tally) => [...tally.refused.keys()]))
  expect(refused.size).toBeGreaterThan(55)
  const cleared = tallies.reduce((sum, tally) => sum + tally.cleared, 0)
  expect(cleared).toBeGreaterThan(150)
  const sum = (figure: 'openGates' | 'askedOwing' | 'piecesAtOpenGates') =>
    tallies.reduce((total, tally) => total + tally[figure], 0)
  expect(sum('openGates')).toBeGreaterThan(1000)
  expect(sum('piecesAtOpenGates')).toBeGreaterThan(3000)
  expect(sum('askedOwing')).toBeGreaterThan(50)
  const failed = tallies.reduce((sum, { written }) => sum + (written.get('torque-missed') ?? 0), 0)
  expect(failed).toBeGreaterThan(10)
  const used = tallies.reduce((sum, tally) => sum + tally.labelsUsed, 0)
  expect(used).toBeGreaterThan(45)
  expect(ABOUT_LABELS.filter((code) => !refused.has(code))).toEqual([])
})

const ABOUT_LABELS = [
  'label-unused',
  'label-in-use',
  'no-such-label',
  'no-unused-labels',
  'slots-not-said',
  'too-many-labels',
  'picture-known',
  'picture-wrong',
]

const everyEntryType: Record<EntryType, true> = {
  opened: true,
  described: true,
  archived: true,
  'strip-began': true,
  'strip-ended': true,
  'step-added': true,
  'step-changed': true,
  noted: true,
  'container-opened': true,
  'container-put': true,
  'container-voided': true,
  'labels-dealt': true,
  'labels-voided': true,
  'pictures-added': true,
  'picture-sorted': true,
  'came-off': true,
  drained: true,
  filled: true,
  marked: true,
  'put-in': true,
  moved: true,
  supplied: true,
  decided: true,
  rehomed: true,
  renamed: true,
  settled: true,
  merged: true,
  'left-out-settled': true,
  'build-began': true,
  fitted: true,
  confirmed: true,
  'tightening-set': true,
  tightened: true,
  'angle-settled': true,
  'condition-said': true,
  'wrench-chosen': true,
  'torque-missed': true,
  'loosening-set': true,
  loosened: true,
  'laid-out': true,
  'turned-over': true,
  measured: true,
  sized: true,
  slackened: true,
  looked: true,
  'build-done': true,
  failed: true,
  reopened: true,
  overridden: true,
  counted: true,
  explained: true,
  stopped: true,
  cleared: true,
  started: true,
  closed: true,
  'checks-set': true,
  'checks-done': true,
  'check-dropped': true,
  judged: true,
  bound: true,
  compared: true,
  'trigger-set': true,
  'trigger-dropped': true,
  'found-out': true,
  carrying: true,
  'order-lined': true,
  'order-changed': true,
  'order-returned': true,
  'part-noted': true,
  'sent-out': true,
  'came-back': true,
  'consumable-set': true,
  'consumable-dropped': true,
  applied: true,
  'seen-again': true,
  undone: true,
  redone: true,
}
