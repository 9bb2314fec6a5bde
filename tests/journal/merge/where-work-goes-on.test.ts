import { expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import type { Entry } from '../../../src/journal/entry.ts'
import { fold } from '../../../src/journal/fold.ts'
import { planMerge } from '../../../src/journal/merge/plan-merge.ts'
import { type InHand, whereWorkGoesOn } from '../../../src/journal/merge/where-work-goes-on.ts'
import { begin, endStrip, hand, off, strip } from '../../support/commands.ts'
import { numbered, openJob } from '../../support/record.ts'
import { Pen } from './parted-job.ts'

const job = written([], 'c', openJob, strip('plate off'), off(6, 'bolts'))

test('the next bolt comes off at this bench, into its step and its bag', () => {
  const ours = written(job, 'a', strip('sump off'), off(4, 'nuts'))
  const { inHand, pen } = merged(ours, written(job, 'b', strip('pump off'), off(3, 'studs')))
  expect(inHand).toEqual({ strip: 2, build: null, hand: 2 })
  expect(pen.state).toMatchObject({ strip: 2, hand: 2 })
  expect(pen.state.steps.get(3)).toMatchObject({ title: 'pump off', stripping: false })
  expect(pen.give(off(1, 'seal', { into: hand }))).toBe(true)
  expect(pen.entries.at(-1)).toMatchObject({ step: 2, moves: [{ to: 'c2' }] })
})

test('a step that the copy ended is in hand no more, nor a bag that it made void', () => {
  const ours = written(job, 'a', { do: 'note', kind: 'note', text: 'a note' })
  const void1: Command = { do: 'void-container', container: 1, reason: 'torn' }
  const emptied: Command = { do: 'move', piece: 'p1', into: { kind: 'place', place: 'bench' } }
  const { inHand, pen } = merged(ours, written(job, 'b', endStrip, emptied, void1))
  expect(inHand).toEqual({ strip: null, build: null, hand: null })
  expect(pen.state).toMatchObject({ strip: null, hand: null })
})

test('a step of the way back stays in hand where it is still under way; else that of the copy is', () => {
  const two = written(job, 'c', strip('pump off'), off(3, 'studs'), endStrip)
  const ours = written(two, 'a', begin(2))
  const note: Command = { do: 'note', kind: 'note', text: 'a note' }
  expect(merged(ours, written(two, 'b', note)).inHand).toMatchObject({ build: 2 })
  expect(merged(written(two, 'a', note), written(two, 'b', begin(2))).inHand).toMatchObject({ build: 2 })
})

test('what is said to be in hand has to be there', () => {
  const note = (inHand: InHand): Entry[] => {
    const facts = { copy: '', taken: 0, leftOut: [], renumbered: [], inHand }
    return [...job, { ...numbered({ type: 'merged', ...facts }, job.length + 1), id: 'z' }]
  }
  const nothing = { strip: null, build: null, hand: null }
  expect(() => fold(note({ ...nothing, strip: 9 }))).toThrow('no step 9')
  expect(() => fold(note({ ...nothing, build: 9 }))).toThrow('no step 9')
  expect(() => fold(note({ ...nothing, hand: 9 }))).toThrow('no container 9')
})

function written(before: readonly Entry[], by: string, ...commands: Command[]): Entry[] {
  const pen = new Pen(before, by)
  for (const command of commands)
    if (!pen.give(command)) throw new Error(`${JSON.stringify(command)} was refused`)
  return pen.entries
}

/** The copy merged, and the merge noted behind it. */
function merged(ours: readonly Entry[], theirs: readonly Entry[]): { inHand: InHand; pen: Pen } {
  const planned = planMerge(ours, theirs)
  if (!planned.ok) throw new Error(planned.why)
  const { fits } = planned.plan
  const pen = new Pen([...ours, ...fits], 'm')
  const inHand = whereWorkGoesOn(fold(ours), pen.state, fits)
  pen.give({ do: 'note-merge', copy: '', taken: fits.length, leftOut: [], renumbered: [], inHand })
  return { inHand, pen }
}
