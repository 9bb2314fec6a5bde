import { spawnSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { holderHere } from '../../../src/storage/lock/lock-holder.ts'
import { jobWith } from '../support/bench.ts'

/** Four bolts through their torque and one through its angle, at the screens. */
function inAnAngle() {
  const bench = jobWith(...HEAD)
  bench.enter('.3', '', ...Array.from({ length: 5 }, () => 'turn'))
  return bench
}

const HEAD = [
  'begin cylinder head off, does not hide',
  'off cylinder head into bench',
  'off 4 M8x60 E12 head bolts into new bag',
  'end',
  'tighten head bolts: 50 Nm, 90 deg',
  'take 1',
  'fit head bolts',
  'fit cylinder head',
]

/** The sign that a program leaves which had the job open and was killed. */
function signOfTheDead(folder: string): void {
  const { pid } = spawnSync(process.execPath, ['--version'])
  const name = `journal.open-${pid}`
  writeFileSync(join(folder, name), JSON.stringify({ ...holderHere(name), pid }))
}

test('where another program died in an angle pass, Enter turns nothing: the next bolt is in doubt', () => {
  const bench = inAnAngle()
  signOfTheDead(bench.path)
  const before = bench.entries()
  bench.type('\r')
  expect(bench.answer()).toContain('noted as broken off')
  expect(bench.entries()).toBe(before + 1)
  const tightening = bench.state().tightenings.get('t1')
  expect(tightening?.suspect).not.toBeNull()
  expect(tightening?.done.map(({ size }) => size)).toEqual([4, 1])
  expect(bench.text()).toContain('IN DOUBT')
  // Said once: from then on it is a stop like any other.
  bench.type('\r')
  expect(bench.entries()).toBe(before + 1)
})

test('what is typed is done, and the break noted before it', () => {
  const bench = inAnAngle()
  signOfTheDead(bench.path)
  bench.enter('turn')
  expect(
    bench
      .state()
      .tightenings.get('t1')
      ?.done.map(({ size }) => size),
  ).toEqual([4, 1])
  expect(bench.answer()).toMatch(/may have been turned already|in doubt/i)
})

test('nobody died: Enter is what it was', () => {
  const bench = inAnAngle()
  bench.type('\r')
  expect(bench.state().tightenings.get('t1')?.suspect).toBeNull()
  expect(
    bench
      .state()
      .tightenings.get('t1')
      ?.done.map(({ size }) => size),
  ).toEqual([4, 2])
})
