import { createHash } from 'node:crypto'
import { copyFileSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { decide } from '../../src/journal/decide/decide.ts'
import { ENTRY_VERSION, type Entry, entrySchemas, parseEntry } from '../../src/journal/entry.ts'
import { fold } from '../../src/journal/fold.ts'
import { auditLedger } from '../../src/ledger/laws.ts'
import { Gates } from '../../src/plan/gates.ts'
import { leftovers } from '../../src/plan/leftovers.ts'
import { nextTurn } from '../../src/plan/tightening.ts'
import { Session } from '../../src/session/session.ts'
import { JOURNAL_NAME } from '../../src/storage/journal/journal-file.ts'
import { readLines } from '../../src/storage/journal/line.ts'
import { openJournal } from '../../src/storage/journal/open-journal.ts'
import { entryText } from '../../src/words/entries.ts'
import { leftoverLines } from '../model/leftover-lines.ts'
import { NaiveModel } from '../model/naive-model.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import { stateText } from '../support/record.ts'

const OLDER = join(import.meta.dirname, 'older')

interface Kept {
  /** The version of its entries. */
  version: number
  entries: number
  /** Of the file: what was ever recorded is never written anew. */
  sha256: string
  /** Whether the job was brought to its end: then nothing is left over. */
  ended: boolean
}

/** Journals as the programs of their time wrote them, each by the name of what that program could not do yet, or of what is told. */
const KEPT: Readonly<Record<string, Kept>> = {
  'before-drawings': {
    version: 1,
    entries: 77,
    sha256: '486b7a4379098a10c99d269b85ac9f36028ab1dcbda4c767e16e26d1f750206a',
    ended: false,
  },
  'before-judging': {
    version: 1,
    entries: 98,
    sha256: 'fbf26b372366ef4924af23f5a46a334732ff0357b87078d20c88b1fbf277560b',
    ended: true,
  },
  'before-labels': {
    version: 1,
    entries: 457,
    sha256: 'fee57c5e47b05a46074d9e1fbd08f66f20f708afba0f001db486adfc4f75f305',
    ended: true,
  },
  'before-measuring': {
    version: 1,
    entries: 87,
    sha256: 'f3ad53b3c34359cfac2c8089b39eeef938fcd399b399c1c5e53cb587933a3ef5',
    ended: true,
  },
  'before-merging-sealed': {
    version: 1,
    entries: 60,
    sha256: '6057a4b97d07ce11882f992aa7dc16baa7ed1e3fbc20bcfc9967aab03a9ca239',
    ended: true,
  },
  'before-merging-seen-twice': {
    version: 1,
    entries: 80,
    sha256: '94626a7f0066eae630a1b2c9b328067ffc7080915b29723403e1a3fe7f35b4e2',
    ended: true,
  },
  'before-merging-under-way': {
    version: 1,
    entries: 38,
    sha256: '2515a9dc6b30c060c921772c0c72ad7b0ea4159e099c225e4558e34d63c987d5',
    ended: false,
  },
  'before-merging-warped-head': {
    version: 1,
    entries: 89,
    sha256: '74e651f8f1d52b20afffe01876f4296abba3d0546fa2a37179748d2b7be5ffc9',
    ended: true,
  },
  'before-merging-wrong-pump': {
    version: 1,
    entries: 55,
    sha256: '0c2c044209c160ddba88c6f176232c96f0cd094ecab142b4666da4d29d76827f',
    ended: true,
  },
  'before-practice-parts-on-order': {
    version: 1,
    entries: 51,
    sha256: 'b689889ba1b4d06e4a3d9288a2402d6a09c01cea12a5591511a732a2d299dfb3',
    ended: true,
  },
  'before-practice': {
    version: 1,
    entries: 512,
    sha256: 'ec02661561f018456c1d2c241d3e4e5a394ba7f19bb3cb005159ea6d79341d41',
    ended: true,
  },
  'two-copies-merged': {
    version: 2,
    entries: 32,
    sha256: '6224665709371398b39bd2a696900cc63353d1a5f8b22a406becec1e4fb9a579',
    ended: true,
  },
}

describe('the journals of older programs', () => {
  test('are all here, and none is written anew', () => {
    const files = readdirSync(OLDER).filter((file) => file.endsWith('.journal'))
    expect(files.sort()).toEqual(Object.keys(KEPT).map((name) => `${name}.journal`))
    for (const [name, { sha256 }] of Object.entries(KEPT))
      expect(createHash('sha256').update(bytesOf(name)).digest('hex'), name).toBe(sha256)
  })

  test('have an entry of every kind that could be written in a released version', () => {
    const written = new Set(Object.keys(KEPT).flatMap((name) => rawOf(bytesOf(name)).map(({ type }) => type)))
    for (const version of ['1', '2']) {
      const shapes = JSON.parse(readFileSync(join(OLDER, `shapes-${version}.json`), 'utf8')) as object
      expect(Object.keys(shapes).filter((type) => !written.has(type))).toEqual([])
    }
    expect([...written].filter((type) => !entrySchemas.has(type))).toEqual([])
  })
})

describe.each(Object.entries(KEPT))('%s', (name, { version, entries: count, ended }) => {
  const { entries, problem } = readLines(bytesOf(name), parseEntry)
  const state = fold(entries)

  test('is read whole, through every upgrade since', () => {
    expect(problem).toBeNull()
    expect(entries).toHaveLength(count)
    expect(new Set(rawOf(bytesOf(name)).map(({ v }) => v))).toEqual(new Set([version]))
    expect(new Set(entries.map(({ v }) => v))).toEqual(new Set([ENTRY_VERSION]))
  })

  test('comes to what the naive model makes of it, with every law held', () => {
    const left = leftoverLines(leftovers(new Gates(state)))
    expect(auditLedger(state.ledger)).toEqual([])
    expect(left).toEqual(new NaiveModel(entries).unexplained())
    expect([state.closed, left.length === 0]).toEqual([ended, ended])
  })

  test('is told to its last line without a gap', () => {
    for (const entry of entries) expect(entryText(state, entry)).not.toMatch(/undefined|null|NaN|\[object/)
  })

  test('is gone on with in the same file, whose old lines stay as they were written', () => {
    const folder = temporaryFolder()
    const path = join(folder, JOURNAL_NAME)
    copyFileSync(join(OLDER, `${name}.journal`), path)
    const session = new Session(openJournal(folder, { parse: parseEntry }))
    expect(session.problem).toBeNull()
    const archived = !session.state.job.archived
    expect(session.send({ do: 'archive', archived })).toMatchObject({ kind: 'recorded' })
    const now = readFileSync(path)
    expect(now.subarray(0, bytesOf(name).length).equals(bytesOf(name))).toBe(true)
    expect(rawOf(now).at(-1)).toMatchObject({ v: ENTRY_VERSION, n: count + 1, type: 'archived' })
    const again = new Session(openJournal(folder, { parse: parseEntry }))
    expect(again.problem).toBeNull()
    expect(stateText(again.state)).toBe(stateText(session.state))
    expect(again.state.job.archived).toBe(archived)
  })
})

test('a job of before there were drawings goes on where it stopped: nothing is drawn, the order is as it was set', () => {
  const { entries } = readLines(bytesOf('before-drawings'), parseEntry)
  const afterSlackening = fold(entries.slice(0, entries.findIndex(({ type }) => type === 'slackened') + 1))
  const tightening = afterSlackening.tightenings.get('t1')
  expect(tightening).toMatchObject({ order: ['1', '3', '2', '4'], piece: 'p1' })
  expect(tightening && nextTurn(tightening)).toMatchObject({ pass: 0, fastener: '1' })
  expect(afterSlackening.layouts).toEqual([])
  expect([...afterSlackening.steps.values()].map(({ turned, turns }) => [turned, turns])).toEqual([
    [0, undefined],
    [0, undefined],
    [0, undefined],
  ])
  expect(decide(afterSlackening, { do: 'tighten' })).toMatchObject({ ok: true })
  expect(
    decide(fold(entries), {
      do: 'set-tightening',
      piece: 'p1',
      passes: [{ kind: 'snug', typed: 'snug' }],
    }),
  ).toMatchObject({
    ok: true,
    body: { type: 'tightening-set', tightening: { id: 't1' } },
  })
})

test('a job stopped in a torque pass begins that pass again, as it did then, and stands where it was left', () => {
  const { entries } = readLines(bytesOf('before-merging-under-way'), parseEntry)
  const next = (upTo: readonly Entry[]) => {
    const tightening = fold(upTo).tightenings.get('t1')
    return tightening && nextTurn(tightening)
  }
  expect(next(entries.slice(0, entries.findIndex(({ type }) => type === 'stopped') + 1))).toMatchObject({
    pass: 1,
    fastener: '1',
  })
  expect(next(entries)).toMatchObject({ pass: 2, fastener: '3' })
})

function bytesOf(name: string): Buffer {
  return readFileSync(join(OLDER, `${name}.journal`))
}

/** Each entry as it stands on its line, behind the checksum. */
function rawOf(journal: Buffer): { v: number; n: number; type: string }[] {
  return journal
    .toString('utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line.slice(line.indexOf(' ') + 1)))
}
