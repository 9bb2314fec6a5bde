import { describe, expect, test } from 'vitest'
import type { EntryBody } from '../../src/journal/entry.ts'
import { lawfulPart } from '../../src/journal/lawful-part.ts'
import { factsOfJournal } from '../../src/storage/backup/journal-facts.ts'
import { fileOf } from '../storage/support/journal-bytes.ts'
import { off, strip } from '../support/commands.ts'
import { numbered, openJob, record, stateText } from '../support/record.ts'

const before = record([openJob, strip('bracket off'), off(6, 'bracket bolt')])
const tooMany: EntryBody = { type: 'moved', moves: [{ piece: 'p1', count: 7, from: 'c1', to: 'bench' }] }

describe('what follows from a journal, as far as it is lawful', () => {
  test.each<[string, EntryBody[], number | null]>([
    ['all of it', [], null],
    ['what was taken back need not be', [tooMany, { type: 'undone', entry: 4 }], null],
    ['up to the first that is not', [tooMany, { type: 'strip-ended', step: 1 }], 4],
    ['one that passed only because it was taken back behind another', [tooMany, tooMany, undone(4)], 4],
    ['the same, three times over', [tooMany, tooMany, tooMany, undone(5), undone(4)], 4],
  ])('%s; a back-up names the same line', (_, bodies, n) => {
    const entries = [...before.entries, ...bodies.map((body, index) => numbered(body, 4 + index))]
    const { state, unlawful } = lawfulPart(entries)
    expect(unlawful?.n ?? null).toBe(n)
    if (n !== null) expect(stateText(state)).toBe(stateText(before.state))
    const { job } = factsOfJournal(fileOf(entries))
    expect(job.hurt).toEqual(n === null ? null : { line: n, why: 'law' })
  })
})

function undone(entry: number): EntryBody {
  return { type: 'undone', entry }
}
