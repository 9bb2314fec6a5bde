import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import type { Entry } from '../../../src/journal/entry.ts'
import { fold, takenBack } from '../../../src/journal/fold.ts'
import { planMerge } from '../../../src/journal/merge/plan-merge.ts'
import { referencesOf } from '../../../src/journal/merge/references.ts'
import { auditLedger } from '../../../src/ledger/laws.ts'
import { buildOrder } from '../../../src/plan/order.ts'
import {
  at,
  drain,
  endStrip,
  mark,
  move,
  newBag,
  off,
  snug,
  strip,
  tightening,
} from '../../support/commands.ts'
import { openJob } from '../../support/record.ts'
import { journalsOf, Pen, partedJobs } from './parted-job.ts'
import { namesOf, oddities, placesByEntry, toldByEntries } from './told-by-entries.ts'

// Random jobs that went two ways, with every kind of command in all three parts. What is held after each merge is held
// whatever was done; what the merged record comes to is compared without its numbers.

test('whatever was written on both ways: every law holds and nothing is lost', () => {
  const tally = { fits: 0, conflicts: new Set<string>(), whole: 0, places: 0 }
  fc.assert(
    fc.property(partedJobs, (job) => {
      const { both, ours, theirs } = journalsOf(job)
      const fresh = theirs.slice(both.length)
      const planned = planMerge(ours, theirs)
      if (!planned.ok) {
        expect(planned.why).toBe('nothing-new')
        expect(fresh.filter((entry) => !isSilent(entry) && !isNoteOfMerge(entry))).toEqual([])
        return
      }
      const { fits, conflicts, onlyHere, renumbered } = planned.plan
      const merged = [...ours, ...fits]
      expect(onlyHere).toBe(ours.length - both.length)
      expectLawful(merged)
      const odd = new Set([...oddities(ours), ...oddities(theirs)])
      expect(oddities(merged).filter((each) => !odd.has(each))).toEqual([])
      expectAllThere(fresh, fits, conflicts)
      for (const { there, here } of renumbered) expect(there).not.toBe(here)
      if (onlyHere === 0) expect(merged).toEqual(theirs)
      else if (conflicts.length === 0) tally.whole += 1

      const again = planMerge(merged, theirs)
      expect(again.ok ? again.plan.fits : []).toEqual([])
      if (conflicts.length === 0) expect(again).toEqual({ ok: false, why: 'nothing-new' })

      tally.places += expectPlaces(both, ours, theirs, merged, conflicts)
      tally.fits += fits.length
      for (const { why } of conflicts) tally.conflicts.add(why)
    }),
    { numRuns: 250, seed: 31 },
  )
  expect([...tally.conflicts].sort()).toEqual(['follows', 'label-taken', 'law', 'same-thing'])
  expect(tally.fits).toBeGreaterThan(200)
  expect(tally.whole).toBeGreaterThan(15)
  expect(tally.places).toBeGreaterThan(100)
})

test('where all fits, it does not matter into which copy the other is merged', () => {
  let merged = 0
  fc.assert(
    fc.property(partedJobs, (job) => {
      const { ours, theirs } = journalsOf(job)
      const one = planMerge(ours, theirs)
      const other = planMerge(theirs, ours)
      if (!one.ok || !other.ok || one.plan.conflicts.length + other.plan.conflicts.length > 0) return
      const here = [...ours, ...one.plan.fits]
      const there = [...theirs, ...other.plan.fits]
      expect(toldByEntries(here)).toEqual(toldByEntries(there))
      expect(placesByEntry(here)).toEqual(placesByEntry(there))
      // Either copy lacks nothing of the other, whatever their numbers are.
      const again = planMerge(here, there)
      expect(again.ok ? again.plan.conflicts : []).toEqual([])
      merged += 1
    }),
    { numRuns: 300, seed: 12 },
  )
  expect(merged).toBeGreaterThan(15)
})

test('two who work on different things never stand in each other’s way', () => {
  fc.assert(
    fc.property(fc.array(deed, { maxLength: 12 }), fc.array(deed, { maxLength: 12 }), (here, there) => {
      const both = written([], 'c', [openJob, ...plates])
      const ours = written(
        both,
        'a',
        here.map((each) => each('left', 'p1', 'p2')),
      )
      const theirs = written(
        both,
        'b',
        there.map((each) => each('right', 'p3', 'p4')),
      )
      const planned = planMerge(ours, theirs)
      if (!planned.ok) {
        expect(theirs.length).toBe(both.length)
        return
      }
      expect(planned.plan.conflicts).toEqual([])
      expect(planned.plan.fits.length).toBe(theirs.length - both.length)
      const places = placesByEntry([...ours, ...planned.plan.fits])
      for (const journal of [ours, theirs])
        for (const [piece, place] of placesByEntry(journal))
          if (piece.startsWith(journal === ours ? 'a' : 'b')) expect(places.get(piece)).toBe(place)
    }),
    { numRuns: 100, seed: 5 },
  )
})

/** Of each side a plate, with its step, 6 bolts and 2 clips. */
const plates = ['left', 'right'].flatMap((side): Command[] => [
  strip(`${side} plate off`),
  off(6, `${side} bolt`),
  off(2, `${side} clip`),
  endStrip,
])

/** Something that is done on one side of the machine, with its bolts and clips. */
type Deed = (side: string, bolts: `p${number}`, clips: `p${number}`) => Command

const deed: fc.Arbitrary<Deed> = fc.constantFrom<Deed[]>(
  (_, bolts) => move(bolts, at('bench'), { count: 1 }),
  (_, __, clips) => move(clips, newBag),
  (side) => strip(`${side} pump off`),
  (side) => off(3, `${side} stud`, { into: newBag }),
  (side) => off(1, `${side} seal`, { into: newBag }),
  (side, bolts) => mark(`${side} dot`, bolts),
  (side) => drain(`${side} oil`),
  (_, bolts) => tightening(bolts, [snug]),
  (side) => ({ do: 'note', kind: 'note', text: `look at the ${side} side` }),
  (side, bolts) => ({ do: 'rename-piece', piece: bolts, name: `${side} screw` }),
  () => ({ do: 'open-container', kind: 'tray', slots: 4 }),
  () => ({ do: 'undo' }),
)

/** What was given and not refused. */
function written(before: readonly Entry[], by: string, commands: readonly Command[]): Entry[] {
  const pen = new Pen(before, by)
  for (const command of commands) {
    // What both have is not this side's to take back.
    if (
      command.do === 'undo' &&
      pen.entries
        .filter(({ n }) => pen.state.inForce.includes(n))
        .at(-1)
        ?.id.startsWith('c')
    )
      continue
    pen.give(command)
  }
  return pen.entries
}

/** A stop without words, and what speaks of one. */
function isSilent(entry: Entry): boolean {
  return (entry.type === 'stopped' && entry.note === '') || entry.type === 'undone' || entry.type === 'redone'
}

/** Of one that left nothing out. */
function isNoteOfMerge(entry: Entry): boolean {
  return entry.type === 'merged' && entry.leftOut.length === 0
}

function expectLawful(entries: readonly Entry[]): void {
  const state = fold(entries)
  expect(auditLedger(state.ledger)).toEqual([])
  expect(buildOrder(state.steps)).not.toHaveProperty('cycle')
  expect(entries.map(({ n }) => n)).toEqual(entries.map((_, index) => index + 1))
}

/** Each entry of the copy is taken over or listed, once, in its order; what says nothing may be neither. */
function expectAllThere(
  fresh: readonly Entry[],
  fits: readonly Entry[],
  conflicts: readonly { entry: Entry; why: string; against: readonly Entry[] }[],
): void {
  const taken = new Set(fits.map(({ id }) => id))
  const listed = new Set(conflicts.map(({ entry }) => entry.id))
  const back = takenBack(fresh)
  for (const entry of fresh) {
    const found = Number(taken.has(entry.id)) + Number(listed.has(entry.id))
    if (found !== 1 && !(found === 0 && (isSilent(entry) || back.has(entry.n))))
      throw new Error(`${entry.type} is there ${found} times`)
  }
  expect(fits.map(({ id }) => id)).toEqual(fresh.filter(({ id }) => taken.has(id)).map(({ id }) => id))
  for (const { why, against } of conflicts)
    if (why === 'same-thing') expect(against.length).toBeGreaterThan(0)
  for (const { entry } of conflicts) expect(fresh).toContain(entry)
}

/** Where only one side touched a piece, it is where that side has it. Answers how many pieces that was said of. */
function expectPlaces(
  both: readonly Entry[],
  ours: readonly Entry[],
  theirs: readonly Entry[],
  merged: readonly Entry[],
  conflicts: readonly { entry: Entry }[],
): number {
  const name = namesOf(theirs)
  const leftOut = new Set(
    conflicts.flatMap(({ entry }) =>
      referencesOf(entry).map(({ kind, no }) => (kind === 'entry' ? 'any' : name(`p${no}`))),
    ),
  )
  const [before, here, there, after] = [both, ours, theirs, merged].map(placesByEntry)
  let told = 0
  for (const [piece, place] of after ?? []) {
    const [was, one, two] = [before?.get(piece), here?.get(piece), there?.get(piece)]
    // What the copy did with it may have been left out.
    if (leftOut.has(piece) || leftOut.has('any') || (one !== was && two !== was)) continue
    expect(place).toBe(one === was ? two : one)
    told += 1
  }
  return told
}
