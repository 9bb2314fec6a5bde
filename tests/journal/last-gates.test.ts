import { describe, expect, test } from 'vitest'
import type { EntryBody } from '../../src/journal/entry.ts'
import { lawfulPart } from '../../src/journal/lawful-part.ts'
import { planMerge } from '../../src/journal/merge/plan-merge.ts'
import { begin, clear, done, endStrip, firstStart, off, putOn, strip } from '../support/commands.ts'
import { numbered, openJob, record } from '../support/record.ts'

// The last law is held where a record is read, not only where a command is decided: a line may be well formed, its
// checksum right, and nobody have decided it.

const cleared: EntryBody = { type: 'cleared' }
const started: EntryBody = { type: 'started' }
const closed: EntryBody = { type: 'closed' }
const off6 = [openJob, strip('bracket off'), off(6, 'bracket bolts'), endStrip]
const back = [...off6, begin(1), putOn('p1'), done()]

describe('the first start is cleared only on an empty trial balance, whoever wrote so', () => {
  test.each<[string, typeof back, EntryBody[], number | null]>([
    ['cleared with six bolts off', off6, [cleared], 5],
    ['cleared with six bolts off, and taken back', off6, [cleared, { type: 'undone', entry: 5 }], null],
    ['cleared with a step under way', back.slice(0, -1), [cleared], 7],
    ['cleared with nothing left over', back, [cleared, started, closed], null],
    ['started without', back, [started], 8],
    ['started after what withdrew it', back, [cleared, { type: 'undone', entry: 8 }, started], 10],
    ['closed without a start', back, [cleared, closed], 9],
  ])('%s', (_, commands, bodies, n) => {
    const before = record(commands).entries
    const entries = [...before, ...bodies.map((body, at) => numbered(body, before.length + 1 + at))]
    const { state, unlawful } = lawfulPart(entries)
    expect(unlawful?.n ?? null).toBe(n)
    if (n !== null) expect([state.started, state.closed]).toEqual([false, false])
  })

  test('a start stands on its clearance, when the copy took that back', () => {
    const both = record([...back, clear]).entries
    const ours = record([firstStart], both).entries
    const theirs = [
      ...both,
      { ...numbered({ type: 'undone', entry: both.length }, both.length + 1), id: 'b1' },
    ]
    const planned = planMerge(ours, theirs)
    expect(planned).toMatchObject({
      ok: true,
      plan: { fits: [], conflicts: [{ entry: { id: 'b1' }, why: 'law' }] },
    })
  })
})
