import { describe, expect, test } from 'vitest'
import { ENTRY_VERSION, parseEntry } from '../../src/journal/entry.ts'
import { NewerEntry, upgraded } from '../../src/journal/upgrades.ts'

const written = { v: 1, n: 4, at: '2030-01-01T08:00:00.000Z', id: 'e4', type: 'strip-ended', step: 1 }

describe('an entry of an older version', () => {
  test('is read in the shape of the newest, and says so', () => {
    for (let v = 1; v <= ENTRY_VERSION; v += 1)
      expect(parseEntry({ ...written, v })).toEqual({ ...written, v: ENTRY_VERSION })
  })

  test('stays as it was in what was handed in', () => {
    const frozen = Object.freeze({ ...written })
    expect(upgraded(frozen)).toEqual({ ...written, v: ENTRY_VERSION })
    expect(frozen.v).toBe(1)
  })
})

describe('an entry of a newer version', () => {
  test('is told by its number, whatever else it holds, in a shape that is known here too', () => {
    for (const v of [ENTRY_VERSION + 1, ENTRY_VERSION + 40]) {
      const newer = expect.objectContaining({ name: 'NewerEntry', version: v, known: ENTRY_VERSION })
      expect(() => parseEntry({ ...written, v })).toThrow(newer)
      expect(() => parseEntry({ v })).toThrow(newer)
    }
  })
})

test.each([
  ['no number', 'two'],
  ['none', undefined],
  ['nothing', null],
  ['a list', [3]],
  ['zero', 0],
  ['below zero', -1],
  ['a fraction', 2.5],
  ['beyond counting', 2 ** 60],
])('a version that no program ever wrote is no entry: %s', (_, v) => {
  const read = () => parseEntry({ ...written, v })
  expect(read).toThrow()
  expect(read).not.toThrow(NewerEntry)
})
