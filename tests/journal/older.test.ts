import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { decide } from '../../src/journal/decide/decide.ts'
import { parseEntry } from '../../src/journal/entry.ts'
import { fold } from '../../src/journal/fold.ts'
import { auditLedger } from '../../src/ledger/laws.ts'
import { Gates } from '../../src/plan/gates.ts'
import { leftovers } from '../../src/plan/leftovers.ts'
import { nextTurn } from '../../src/plan/tightening.ts'
import { readLines } from '../../src/storage/line.ts'
import { entryText } from '../../src/words/entries.ts'
import { leftoverLines } from '../model/leftover-lines.ts'
import { NaiveModel } from '../model/naive-model.ts'

// Written by the program as it was before there were drawings, easing, readings and turns by hand, one entry of every
// kind at least. Never written anew: what was ever recorded stays readable.
const { entries, problem } = readLines(
  readFileSync(join(import.meta.dirname, 'older', 'before-drawings.journal')),
  parseEntry,
)

describe('a journal in the shapes of an older program', () => {
  test('is read whole, every kind of entry that there was', () => {
    expect(problem).toBeNull()
    expect(entries).toHaveLength(77)
    expect(new Set(entries.map(({ type }) => type)).size).toBe(46)
  })

  test('comes to what the naive model makes of it, with every law held', () => {
    const state = fold(entries)
    expect(auditLedger(state.ledger)).toEqual([])
    expect(leftoverLines(leftovers(new Gates(state)))).toEqual(new NaiveModel(entries).unexplained())
  })

  test('is told to its last line without a gap', () => {
    const state = fold(entries)
    for (const entry of entries) expect(entryText(state, entry)).not.toMatch(/undefined|null|NaN|\[object/)
  })

  test('goes on where it stopped: nothing is drawn, the order is as it was set', () => {
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
    const last = fold(entries)
    expect(
      decide(last, { do: 'set-tightening', piece: 'p1', passes: [{ kind: 'snug', typed: 'snug' }] }),
    ).toMatchObject({
      ok: true,
      body: { type: 'tightening-set', tightening: { id: 't1' } },
    })
  })
})
