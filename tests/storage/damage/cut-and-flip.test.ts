import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { type Entry, parseEntry } from '../../../src/journal/entry.ts'
import { examine } from '../../../src/storage/damage/examine.ts'
import { cutUp, type Piece } from '../../../src/storage/damage/pieces.ts'
import { repairAt } from '../../../src/storage/damage/repair.ts'
import { JOURNAL_NAME } from '../../../src/storage/journal/journal-file.ts'
import { FILE_START, type LineEnd, readLines } from '../../../src/storage/journal/line.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'
import { chanceOf } from '../../support/damage/chance.ts'
import { demoUntil } from '../../support/paper/demo-until.ts'
import { linesOf } from '../support/journal-bytes.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

/** The journal of the demo job, told whole. */
let whole: Buffer
let entries: readonly Entry[]
/** Where each line begins, and what a reader knows there. */
let starts: LineEnd[]
/** The most bytes that a line has. */
let longest: number

beforeAll(() => {
  const home = mkdtempSync(join(tmpdir(), 'putback-storage-'))
  try {
    const session = demoUntil(home, 'After the start')
    whole = readFileSync(session.store.path)
    entries = session.entries()
  } finally {
    rmSync(home, { recursive: true, force: true })
  }
  starts = [FILE_START]
  const lines = linesOf(whole)
  longest = Math.max(...lines.map(({ length }) => length))
  for (const line of lines) starts.push(readLines(line, parseEntry, starts.at(-1)).end)
})

/** The last line that begins at or before a byte. */
function lineAt(byte: number): LineEnd {
  let low = 0
  let high = starts.length - 1
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if ((starts[middle] as LineEnd).byte <= byte) low = middle
    else high = middle - 1
  }
  return starts[low] as LineEnd
}

test('the demo job is long enough to say something', () => {
  expect(entries.length).toBeGreaterThan(300)
  expect(whole.length).toBeGreaterThan(64 * 1024)
})

describe('cut at every byte of the last 4 KiB', () => {
  const cuts = () => Array.from({ length: 4096 }, (_, index) => whole.length - 4096 + index)

  test('the torn line is found, and everything before it is read', () => {
    let between = 0
    for (const length of cuts()) {
      const last = lineAt(length)
      const { problem, end } = readLines(whole.subarray(last.byte, length), parseEntry, last)
      // Between two lines there is nothing to be found: it is the journal as it once was.
      if (last.byte === length) between += 1
      else if (problem?.kind !== 'torn' || problem.bytes !== length - last.byte || end !== last)
        expect.unreachable(`cut at ${length}: ${JSON.stringify(problem)}`)
    }
    expect(between).toBe(
      starts.filter(({ byte }) => byte >= whole.length - 4096 && byte < whole.length).length,
    )
  })

  test('opened on a disk, every 64th', () => {
    for (const length of cuts().filter((_, index) => index % 64 === 0)) {
      const { folder, store } = opened(whole.subarray(0, length))
      const last = lineAt(length)
      expect(ids(store.entries())).toEqual(ids(entries.slice(0, last.line)))
      expect(store.setAside.map(({ bytes }) => bytes)).toEqual(
        last.byte === length ? [] : [length - last.byte],
      )
      expect(readFileSync(join(folder, JOURNAL_NAME)).equals(whole.subarray(0, last.byte))).toBe(true)
    }
  })

  test('only the feed of the last line cut off: the doctor puts it back', () => {
    const found = examine(whole.subarray(0, -1), looking)
    expect(found).toMatchObject({
      verdict: 'certain',
      findings: [{ kind: 'unended', entry: entries.length }],
    })
    expect(whole.equals(found.mended)).toBe(true)
  })
})

describe('one bit flipped in 5,000 places', () => {
  const places = () => {
    const chance = chanceOf(2026)
    return Array.from({ length: 5000 }, () => ({
      byte: chance.whole(0, whole.length - 1),
      bit: chance.whole(0, 7),
    }))
  }

  test('each is found in its line, everything before it is read, and the line is found again to the very byte', () => {
    let again = 0
    for (const { byte, bit } of places()) {
      const { bytes, line } = flippedAt(byte, bit)
      // This line, and what a wrong line feed makes one with it: all before them is as it was.
      const from = bytes.subarray(line.byte, line.byte + 2 * longest)
      const { problem, end } = readLines(from, parseEntry, line)
      if (end !== line || problem?.line !== line.line + 1)
        expect.unreachable(`byte ${byte}, bit ${bit}: not found`)
      const { pieces } = cutUp(from)
      const [piece, next] = pieces as [Piece, Piece]
      const place = { bytes: from, piece, next, previousCrc: line.crc, n: line.line + 1, parse: parseEntry }
      const found = repairAt(place)
      const { byte: behind } = starts[line.line + 1] as LineEnd
      if (found && whole.subarray(line.byte, behind - 1).equals(found.text)) again += 1
    }
    expect(again).toBe(5000)
  })

  test('the doctor names and mends it in the whole file, every 50th', () => {
    for (const { byte, bit } of places().filter((_, index) => index % 50 === 0)) {
      const { bytes, line } = flippedAt(byte, bit)
      const found = examine(bytes, looking)
      const at = { line: line.line + 1, last: line.line + 1, entry: line.line + 1 }
      expect(found.findings, `byte ${byte}, bit ${bit}`).toEqual([{ kind: 'flipped', ...at, isSure: true }])
      expect([found.verdict, whole.equals(found.mended)]).toEqual(['certain', true])
    }
  })

  test('opened on a disk, every 100th', () => {
    for (const { byte, bit } of places().filter((_, index) => index % 100 === 0)) {
      const { store } = opened(flippedAt(byte, bit).bytes)
      expect(ids(store.entries())).toEqual(ids(entries.slice(0, lineAt(byte).line)))
      expect(store.problem).toMatchObject({ kind: 'damaged', line: lineAt(byte).line + 1 })
    }
  })
})

const looking = { parse: parseEntry, firstUnlawful: () => null }
/** The journal with one bit wrong, and the line that it is in. */
function flippedAt(byte: number, bit: number): { bytes: Buffer; line: LineEnd } {
  const bytes = Buffer.from(whole)
  bytes[byte] = (bytes[byte] as number) ^ (1 << bit)
  return { bytes, line: lineAt(byte) }
}

function ids(of: readonly Entry[]): string {
  return of.map(({ id }) => id).join(' ')
}

function opened(bytes: Uint8Array) {
  const folder = temporaryFolder()
  writeFileSync(join(folder, JOURNAL_NAME), bytes)
  return { folder, store: openJournal(folder, { parse: parseEntry }) }
}
