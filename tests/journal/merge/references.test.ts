import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type * as z from 'zod/mini'
import { noteDealt, nothingDealt } from '../../../src/journal/dealt.ts'
import { bodies, type Entry, parseEntry } from '../../../src/journal/entry.ts'
import { REFERENCE_FIELDS } from '../../../src/journal/merge/reference-fields.ts'
import { type Field, numberOf, referencesOf, rewritten } from '../../../src/journal/merge/references.ts'
import { no } from '../../../src/journal/shapes/parts.ts'
import { journalsOf, partedJobs } from './parted-job.ts'

/** Numbers that stand for another job, for paper, or for a bag in somebody else's hands. */
const NO_REFERENCE = [
  'labels-dealt.from',
  'labels-dealt.to',
  'supplied.borrowed.job',
  'sent-out.outing.job',
  'merged.renumbered.there',
]

interface Leaf {
  path: string
  schema: z.core.$ZodType
  field: Field | undefined
}

/** Every fact of a shape that holds no others, with what is said of it. */
function leavesOf(path: string, schema: z.core.$ZodType, field: Field | undefined): Leaf[] {
  // biome-ignore lint/suspicious/noExplicitAny: the kinds of shape are told apart by a name alone
  const def = schema._zod.def as any
  const under = (key: string): Field | undefined =>
    field === undefined || field === 'plain' ? field : (field as Record<string, Field>)[key]
  switch (def.type) {
    case 'object':
      return Object.entries<z.core.$ZodType>(def.shape).flatMap(([key, each]) =>
        leavesOf(`${path}.${key}`, each, under(key)),
      )
    case 'array':
      return leavesOf(path, def.element, Array.isArray(field) ? field[0] : field)
    case 'optional':
    case 'nullable':
      return leavesOf(path, def.innerType, field)
    case 'union': {
      const options = def.options as z.core.$ZodType[]
      return options.flatMap((option) => {
        const isWord = !['object', 'union'].includes(option._zod.def.type)
        const isFlat = isWord && typeof field === 'object' && !Array.isArray(field)
        return leavesOf(path, option, isFlat ? 'plain' : field)
      })
    }
    default:
      return [{ path, schema, field }]
  }
}

const leaves = Object.entries(bodies).flatMap(([type, body]) =>
  Object.entries(body as Record<string, z.core.$ZodType>).flatMap(([key, schema]) =>
    leavesOf(`${type}.${key}`, schema, (REFERENCE_FIELDS[type as 'opened'] as Record<string, Field>)[key]),
  ),
)

describe('what the numbers of an entry stand for', () => {
  test('is said of every fact of every kind of entry', () => {
    expect(leaves.length).toBeGreaterThan(250)
    expect(leaves.filter(({ field }) => field === undefined).map(({ path }) => path)).toEqual([])
  })

  test('a number with its letter is one, everywhere', () => {
    const lettered = leaves.filter(({ schema }) => schema._zod.def.type === 'template_literal')
    expect(lettered.length).toBeGreaterThan(80)
    expect(
      lettered.filter(({ field }) => field !== 'id' && field !== 'new id').map(({ path }) => path),
    ).toEqual([])
  })

  test('a number of a step or a container is one, but for those that are none', () => {
    const numbers = leaves.filter(({ schema }) => schema === no)
    expect(numbers.length).toBeGreaterThan(50)
    expect(numbers.filter(({ field }) => field === 'plain').map(({ path }) => path)).toEqual(NO_REFERENCE)
  })
})

test('a number with its letter, a place and a gate', () => {
  expect(['p3', 'c14/2', 'finish 7', 'machine', 'start', 'Q12', 'p'].map(numberOf)).toEqual([
    { kind: 'piece', no: 3 },
    { kind: 'container', no: 14 },
    { kind: 'step', no: 7 },
    null,
    null,
    null,
    null,
  ])
})

test('numbers are rewritten, and texts that look like numbers are not', () => {
  const entry = parseEntry({
    v: 2,
    n: 9,
    at: '2030-01-01T08:00:00Z',
    id: 'e9',
    type: 'came-off',
    step: 4,
    began: { no: 4, title: 'c3', after: [2, 3], hides: false },
    opened: { no: 7, kind: 'tray', slots: 4, name: 'p1', inside: 3 },
    pieces: [
      {
        id: 'p5',
        kind: 'part',
        name: 'p5',
        home: { at: 'c3', position: 'c3' },
        should: 1,
        set: 'm1',
        step: 4,
      },
    ],
    openings: [{ piece: 'p5', count: 1, at: 'machine' }],
    moves: [{ piece: 'p5', count: 1, from: 'machine', to: 'c7/2', position: 'c3' }],
    faults: [{ id: 'x1', kind: 'broken', piece: 'p5', count: 1 }],
  })
  expect(rewritten(entry, ({ no }) => no + 100)).toEqual({
    ...entry,
    step: 104,
    began: { no: 104, title: 'c3', after: [102, 103], hides: false },
    opened: { no: 107, kind: 'tray', slots: 4, name: 'p1', inside: 103 },
    pieces: [
      {
        id: 'p105',
        kind: 'part',
        name: 'p5',
        home: { at: 'c3', position: 'c3' },
        should: 1,
        set: 'm1',
        step: 104,
      },
    ],
    openings: [{ piece: 'p105', count: 1, at: 'machine' }],
    moves: [{ piece: 'p105', count: 1, from: 'machine', to: 'c107/2', position: 'c3' }],
    faults: [{ id: 'x101', kind: 'broken', piece: 'p105', count: 1 }],
  })
})

test('over random jobs: rewriting there and back changes nothing, and what is new is what was dealt', () => {
  const seen = new Set<string>()
  fc.assert(
    fc.property(partedJobs, (job) => {
      for (const entry of journalsOf(job).ours) {
        seen.add(entry.type)
        const there = rewritten(entry, ({ no }) => no + 50)
        expect(parseEntry(there)).toEqual(there)
        expect(rewritten(there, ({ no }) => no - 50)).toEqual(entry)
        expect(highestNew(entry)).toEqual(highestDealt(entry))
      }
    }),
    { numRuns: 60, seed: 3 },
  )
  expect(seen.size).toBeGreaterThan(50)
})

function highestNew(entry: Entry) {
  const dealt = nothingDealt()
  for (const { kind, no, isNew } of referencesOf(entry))
    if (isNew && kind !== 'entry') dealt[kind] = Math.max(dealt[kind], no)
  return dealt
}

function highestDealt(entry: Entry) {
  const dealt = nothingDealt()
  if (entry.type !== 'labels-dealt') noteDealt(dealt, entry)
  return dealt
}
