import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import type { Session } from '../../src/session/session.ts'
import { demoUntil } from '../support/paper/demo-until.ts'
import { rebuildFromLabels, rebuildFromPlan, type Share } from '../support/paper/rebuild.ts'

// The record is gone. What labels and the printed plan say, read off their PDF as a person reads them, must give back
// which container held what, how many, in which slot, for which home, position and step, and what is not to be fitted.
// What paper does not give back: times, the order of entries and what was taken back, who did it, pictures, minutes
// beyond their notes, which pieces are single-use before they are used, and the counts of what is on the machine.

describe.each([
  ['at the end of the strip-down', 'Waiting'],
  ['when new parts have come and shims were swapped', 'Build-up'],
])('%s', (_, until) => {
  test('the printed plan alone gives back where every piece is that is off, and where it belongs', async () => {
    const { inContainers, everything } = await rebuildFromPlan(demo(until))
    expect(inContainers.facts).toBeGreaterThan(50)
    expect(inContainers.lost).toEqual([])
    expect(everything.facts).toBeGreaterThan(80)
    expect(everything.lost).toEqual([])
  })

  test('labels of 64 x 33.9 mm alone give back what lies in the containers', async () => {
    const labels = await rebuildFromLabels(demo(until), { width: 64, height: 33.9 })
    expect(share(labels), JSON.stringify(labels.lost)).toBeGreaterThanOrEqual(0.98)
  })
})

test('what no label has room for is missed', async () => {
  const labels = await rebuildFromLabels(demo('Waiting'), { width: 50, height: 25 })
  expect(share(labels)).toBeLessThan(1)
})

test('a record that went on after the printing is not the one on the paper', async () => {
  const later = demo('Waiting')
  later.send({ do: 'move', piece: 'p47', into: { kind: 'container', no: 12, slot: '9' } })
  later.send({ do: 'move', piece: 'p38', into: { kind: 'container', no: 3 }, count: 1 })
  const { inContainers } = await rebuildFromPlan(demo('Waiting'), later.state)
  expect(inContainers.lost.map(({ name, count, slot }) => `${count} ${name} ${slot}`)).toEqual([
    '1 tensioner bolts M6x20 hex 8 null',
    '1 tensioner bolts M6x20 hex 8 null',
    '1 cam caps 9',
  ])
})

function share({ facts, rebuilt }: Share): number {
  return rebuilt / facts
}

function demo(until: string): Session {
  const home = mkdtempSync(join(tmpdir(), 'putback-paper-'))
  onTestFinished(() => rmSync(home, { recursive: true, force: true }))
  return demoUntil(home, until)
}
