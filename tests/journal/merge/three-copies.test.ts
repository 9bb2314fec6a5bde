import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Entry } from '../../../src/journal/entry.ts'
import { fold, takenBack } from '../../../src/journal/fold.ts'
import { planMerge } from '../../../src/journal/merge/plan-merge.ts'
import { auditLedger } from '../../../src/ledger/laws.ts'
import { journalsOf, Pen, partedJobs } from './parted-job.ts'

// A laptop, a bench and a stick between them: three copies that each went on, merged each with each until nothing is new.

test('three copies merged each with each come to rest, with every entry in each of them, in force or owed', () => {
  let leftOut = 0
  fc.assert(
    fc.property(partedJobs, partedJobs, (job, other) => {
      const { both, ours, theirs } = journalsOf(job)
      const written = journalsOf({ ...job, ours: other.ours }).ours.slice(both.length)
      const third = [...both, ...written.map((entry) => ({ ...entry, id: `d${entry.n}` }))]
      const before = [ours, theirs, third]
      const copies: Entry[][] = [...before]
      const mergeAll = (round: number) =>
        PAIRS.filter(([to, from]) => {
          const merged = mergedWith(copies[to], copies[from], `m${to}${from}${round}-`)
          if (merged) copies[to] = merged
          return merged !== null
        })
      for (let round = 1; mergeAll(round).length > 0; round += 1) expect(round).toBeLessThan(4)
      for (const copy of copies) {
        const state = fold(copy)
        expect(auditLedger(state.ledger)).toEqual([])
        const ids = copy.map(({ id }) => id)
        expect(new Set(ids).size).toBe(ids.length)
        const owed = [...state.leftOut.values()].map(({ entry }) => entry)
        expect(before.flatMap(worthKeeping).filter((id) => !ids.includes(id) && !owed.includes(id))).toEqual(
          [],
        )
        leftOut += owed.length
      }
    }),
    { numRuns: 40, seed: 77 },
  )
  expect(leftOut).toBeGreaterThan(50)
})

const PAIRS = [
  [0, 1],
  [1, 2],
  [2, 0],
  [1, 0],
  [2, 1],
  [0, 2],
] as const

/** A record with what another has, and the note of that; null where nothing is new. */
function mergedWith(ours: readonly Entry[] = [], theirs: readonly Entry[] = [], by: string): Entry[] | null {
  const planned = planMerge(ours, theirs)
  if (!planned.ok) {
    expect(planned.why).toBe('nothing-new')
    return null
  }
  const { fits, conflicts, renumbered } = planned.plan
  const pen = new Pen([...ours, ...fits], by)
  const leftOut = conflicts.map(({ entry: { id, at, type } }) => ({
    entry: id,
    at,
    by: undefined,
    says: type,
  }))
  const told = { copy: by, kept: undefined, taken: fits.length, inHand: undefined }
  expect(pen.give({ do: 'note-merge', ...told, renumbered: [...renumbered], leftOut })).toBe(true)
  return pen.entries
}

/** All but what was taken back, and what says nothing where what it is about is not there. */
function worthKeeping(entries: readonly Entry[]): string[] {
  const back = takenBack(entries)
  const quiet = ['stopped', 'undone', 'redone', 'merged']
  return entries.filter(({ n, type }) => !back.has(n) && !quiet.includes(type)).map(({ id }) => id)
}
