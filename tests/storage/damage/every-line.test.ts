import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { examine } from '../../../src/storage/damage/examine.ts'
import { readLines } from '../../../src/storage/journal/line.ts'
import { fileOf, linesOf } from '../support/journal-bytes.ts'
import { type Note, notes, parseNote } from '../support/notes.ts'

const LENGTH = 40
const OURS = fileOf(notes(LENGTH))
const lines = linesOf(OURS)
/** Longer, so that it has a line for each of ours and more. */
const THEIRS = fileOf(notes(LENGTH + 5, 'b'))
const theirs = linesOf(THEIRS)
const entries = Array.from({ length: LENGTH }, (_, index) => index + 1)
const looking = { parse: parseNote, firstUnlawful: (_: readonly Note[]) => null }

describe('each line in turn', () => {
  test('missing: found at its place, and all before it is kept', () => {
    for (const n of entries) {
      const { found, before } = looked(lines.toSpliced(n - 1, 1), n - 1)
      // What ends earlier is a shorter journal, as it once was.
      if (n === LENGTH) expect(found.verdict).toBe('sound')
      else
        expect(found.findings).toEqual([
          { kind: 'missing', line: n, last: n, entry: n, lastEntry: n, isSure: false },
        ])
      expect(before).toBe(true)
    }
  })

  test('doubled: found, and mended', () => {
    for (const n of entries) {
      const { found } = looked(lines.toSpliced(n, 0, line(n)), n)
      expect(found.findings).toEqual([{ kind: 'doubled', line: n + 1, last: n + 1, entry: n, isSure: true }])
      expect(isMended(found)).toBe(true)
    }
  })

  test('swapped with its neighbour: found, and mended', () => {
    for (const n of entries.slice(0, -1)) {
      const { found } = looked(lines.toSpliced(n - 1, 2, line(n + 1), line(n)), n - 1)
      expect(found.findings).toEqual([{ kind: 'moved', line: n + 1, last: n + 1, entry: n, isSure: true }])
      expect(isMended(found)).toBe(true)
    }
  })

  test('replaced by the same line of another journal, or by a later one: found, and all before it is kept', () => {
    for (const [ahead, n] of [0, 3].flatMap((ahead) => entries.map((n) => [ahead, n] as const))) {
      const { found, before } = looked(lines.with(n - 1, theirs[n - 1 + ahead] as Buffer), n - 1)
      // A first line of another journal is as good as ours, until the second one does not follow on it.
      const isFirst = n === 1 && ahead === 0
      expect([found.verdict, before], `line ${n}`).toEqual(['lossy', !isFirst])
      expect(found.findings[0]).toMatchObject({ line: isFirst ? 2 : n, isSure: false })
      expect(found.entries.length).toBe(isFirst ? 1 : n - 1)
    }
  })

  test('with a line of another journal behind it: found, and mended wherever it can only be a stranger', () => {
    for (const n of entries.slice(0, -1)) {
      const { found } = looked(lines.toSpliced(n, 0, theirs[n] as Buffer), n)
      expect(found.findings).toEqual([{ kind: 'foreign', line: n + 1, last: n + 1, isSure: true }])
      expect(isMended(found)).toBe(true)
    }
  })

  test('with two wrong bits: found, never taken for something else', () => {
    for (const n of entries) {
      const hurt = Buffer.from(line(n))
      hurt[12] = (hurt[12] as number) ^ 1
      hurt[60] = (hurt[60] as number) ^ 8
      const { found, before } = looked(lines.with(n - 1, hurt), n - 1)
      expect([found.verdict, before, found.entries.length]).toEqual(['lossy', true, n - 1])
      expect(found.findings[0]).toMatchObject({ line: n, entry: n })
    }
  })
})

describe('whatever happens to a file', () => {
  test('what stands was written just so, and where nothing is to be lost nothing is', () => {
    fc.assert(
      fc.property(fc.array(damage, { minLength: 1, maxLength: 6 }), (damages) => {
        const bytes = damages.reduce((file, hurt) => hurt(file), OURS)
        const { mended, verdict, findings, entries: stand } = examine(bytes, looking)
        // Nothing that was not written, in the order in which it was written: of ours, or where the first line is one of
        // another journal, of that.
        const isOurs = OURS.subarray(0, mended.length).equals(mended)
        expect(isOurs || THEIRS.subarray(0, mended.length).equals(mended)).toBe(true)
        expect(readLines(mended, parseNote)).toMatchObject({
          problem: null,
          entries: { length: stand.length },
        })
        expect(findings.length === 0).toBe(verdict === 'sound')
        if (verdict === 'lossy' || !isOurs) return
        const whole = linesOf(bytes).map(String)
        const lost = lines.filter((each, index) => index >= stand.length && whole.includes(String(each)))
        expect(lost).toEqual([])
      }),
      { numRuns: 1000, seed: 20261130 },
    )
  })
})

const place = fc.nat({ max: 1_000_000 })
type Hurt = (file: Buffer) => Buffer
const at = (file: Buffer, by: number) => (file.length === 0 ? 0 : by % file.length)

/** One thing that happens to files: to a line, or to bytes anywhere. */
const damage: fc.Arbitrary<Hurt> = fc.oneof(
  onLines((all, from) => all.toSpliced(from, 1)),
  onLines((all, from, to) => all.toSpliced(to, 0, all[from] as Buffer)),
  onLines((all, from, to) => all.toSpliced(from, 1).toSpliced(to, 0, all[from] as Buffer)),
  onLines((all, from, to) => all.toSpliced(from, 0, theirs[to % theirs.length] as Buffer)),
  onLines((all, from, to) => all.with(from, theirs[to % theirs.length] as Buffer)),
  onLines((all, from) => all.toSpliced(from, 0, Buffer.from('\n'))),
  fc.tuple(place, fc.nat(7)).map(([by, bit]) => (file: Buffer) => {
    const copy = Buffer.from(file)
    if (copy.length > 0) copy[at(file, by)] = (copy[at(file, by)] as number) ^ (1 << bit)
    return copy
  }),
  place.map((by) => (file: Buffer) => file.subarray(0, at(file, by))),
  fc.tuple(place, fc.nat(200)).map(([by, length]) => (file: Buffer) => {
    return Buffer.concat([file.subarray(0, at(file, by)), Buffer.alloc(length), file.subarray(at(file, by))])
  }),
  fc.tuple(place, fc.nat(200)).map(([by, length]) => (file: Buffer) => {
    return Buffer.from(file).fill(0, at(file, by), Math.min(file.length, at(file, by) + length))
  }),
  fc.constant((file: Buffer) => Buffer.from(file.toString('latin1').replaceAll('\n', '\r\n'), 'latin1')),
  fc.constant((file: Buffer) => Buffer.concat([Buffer.from('\ufeff'), file])),
)

function onLines(change: (all: Buffer[], from: number, to: number) => Buffer[]): fc.Arbitrary<Hurt> {
  return fc.tuple(place, place).map(([from, to]) => (file) => {
    const all = linesOf(file)
    return all.length === 0 ? file : Buffer.concat(change(all, from % all.length, to % all.length))
  })
}

function line(n: number): Buffer {
  return lines[n - 1] as Buffer
}

/** What was found, and whether the reader alone reads all of the first entries. */
function looked(all: readonly Buffer[], good: number) {
  const bytes = Buffer.concat(all)
  const { entries: read } = readLines(bytes, parseNote)
  return { found: examine(bytes, looking), before: read.length === good }
}

function isMended({ verdict, mended }: ReturnType<typeof examine>): boolean {
  return verdict === 'certain' && OURS.equals(mended)
}
