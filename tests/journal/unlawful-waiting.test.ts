import { describe, expect, test } from 'vitest'
import { type Entry, type EntryBody, parseEntry } from '../../src/journal/entry.ts'
import { fold, UnlawfulEntry } from '../../src/journal/fold.ts'
import { endStrip, matchedOff, off } from '../support/commands.ts'
import { given } from '../support/journal.ts'
import { numbered } from '../support/record.ts'

// A record may come from a hostile hand: each line well formed, and none of it what a command would have written.

const { entries } = given(
  off(6, 'bolts'),
  matchedOff(['I1', 'I2'], 'cap'),
  endStrip,
  { do: 'ask-checks', checks: [{ piece: 'p1', kind: 'look', what: ['cracks'] }] },
  { do: 'set-trigger', when: 'rust', items: [{ do: 'replace', piece: 'p1' }] },
  { do: 'line-orders', ordered: true, lines: [{ name: 'bolts', piece: 'p1', count: 6 }] },
  { do: 'send-out', to: 'the shop', pieces: [{ piece: 'p2' }] },
  { do: 'set-consumable', step: 1, kind: 'sealant', name: 'sealant' },
)

const moved = (...moves: object[]) => ({ type: 'moved', moves: moves.map((each) => ({ count: 1, ...each })) })
const asked = (each: object) => ({
  type: 'checks-set',
  checks: [{ id: 'k9', piece: 'p1', kind: 'look', what: [], ...each }],
})
const judged = (each: object) => {
  const verdict = { verdict: 'machine', reason: 'worn', checks: [], moves: [] }
  return { type: 'judged', of: ['p1'], along: [], ...verdict, ...each }
}
const compared = (each: object) => ({
  type: 'compared',
  ...{ piece: 'p1', old: 'p3', features: [], verdict: 'due', moves: [], ...each },
})
const found = (each: object) => {
  const finding = { id: 'y9', text: 'rust', step: null, triggers: [], ...each }
  return { type: 'found-out', finding, checks: [], condemned: [] }
}
const listed = (id: string, piece: string) => ({
  type: 'trigger-set',
  trigger: { id, when: 'rust', items: [{ do: 'replace', piece }] },
})
const lined = (each: object) => ({
  type: 'order-lined',
  since: '2030-01-01',
  orders: [{ id: 'o9', name: 'bolts', count: 6, ordered: true, ...each }],
})
const sentOut = (each: object, moves: object[] = []) => ({
  type: 'sent-out',
  outing: {
    id: 'b9',
    to: 'the shop',
    since: '2030-01-01',
    pieces: [{ piece: 'p1', count: 2 }],
    aside: [],
    ...each,
  },
  moves: moves.length > 0 ? moves : [{ piece: 'p1', count: 2, from: 'c1', to: 'out' }],
})
const putOn = (each: object) => ({
  type: 'consumable-set',
  consumable: { id: 's9', step: 1, kind: 'sealant', name: 'grey', before: [], ...each },
})
const newPiece = (replaces: string) => {
  const bolt = {
    id: 'p9',
    kind: 'fastener',
    name: 'bolt',
    home: { at: 'cover' },
    should: 6,
    step: 1,
    replaces,
  }
  return { type: 'supplied', pieces: [bolt], openings: [], moves: [], retired: [] }
}

describe('a record from a hostile hand is not folded', () => {
  test.each<[string, object]>([
    [
      'two pieces that sit on each other',
      moved({ piece: 'p1', from: 'c1', to: 'p3' }, { piece: 'p3', from: 'c2', to: 'p1' }),
    ],
    ['a container that nobody opened', moved({ piece: 'p1', from: 'c1', to: 'c77' })],
    ['a container without a number', moved({ piece: 'p1', from: 'c1', to: 'c0' })],
    ['a piece that replaces itself', newPiece('p9')],
    ['a piece that replaces one nobody knows', newPiece('p77')],
    ['a check of a piece nobody knows', asked({ piece: 'p77' })],
    ['a check whose number was dealt', asked({ id: 'k1' })],
    ['a check that is done and nobody knows', { type: 'checks-done', checks: ['k77'] }],
    ['a check by a reading nobody knows', { type: 'checks-done', checks: ['k1'], measure: 'q77' }],
    ['a verdict on a piece nobody knows', judged({ of: ['p77'] })],
    ['a verdict by a picture nobody knows', judged({ picture: 'g77' })],
    ['a verdict by a reading nobody knows', judged({ measure: 'q77' })],
    ['a comparison of a piece nobody knows', compared({ piece: 'p77' })],
    ['a comparison with a piece nobody knows', compared({ old: 'p77' })],
    ['a comparison of a piece with itself', compared({ old: 'p1' })],
    ['a comparison by an order nobody knows', compared({ order: 'o77' })],
    ['a finding at a piece nobody knows', found({ piece: 'p77' })],
    ['a finding in a step nobody knows', found({ step: 77 })],
    ['a finding that opens a list nobody knows', found({ triggers: ['h77'] })],
    ['a list about a piece nobody knows', listed('h9', 'p77')],
    ['a list whose number was dealt', listed('h1', 'p1')],
    ['an order for a piece nobody knows', lined({ piece: 'p77' })],
    ['an order whose number was dealt', lined({ id: 'o1' })],
    [
      'more sent back than arrived',
      { type: 'order-returned', order: 'o1', count: 1, reason: 'wrong', moves: [] },
    ],
    ['an outing whose number was dealt', sentOut({ id: 'b1' })],
    ['an outing with more than went', sentOut({ pieces: [{ piece: 'p1', count: 6 }] })],
    ['an outing that forgets what went', sentOut({}, [{ piece: 'p1', count: 1, from: 'c1', to: 'out' }])],
    ['an outing that leaves here what nobody knows', sentOut({ aside: ['p77'] })],
    [
      'a shop that took out what nobody knows',
      {
        type: 'came-back',
        outing: 'b1',
        pieces: [],
        openings: [],
        moves: [],
        tookOut: { text: 'studs', pieces: ['p77'] },
      },
    ],
    ['sealant in a step nobody knows', putOn({ step: 77 })],
    ['sealant that holds up a step nobody knows', putOn({ before: [77] })],
    ['sealant that holds up a filling nobody knows', putOn({ before: ['f77'] })],
    ['sealant whose number was dealt', putOn({ id: 's1' })],
    ['a second look at what is in another step', { type: 'seen-again', step: 1, line: 'p77', says: 'good' }],
    [
      'a kit with a piece nobody knows',
      {
        ...newPiece('p1'),
        pieces: [],
        kit: { name: 'top', lines: [{ name: 'bolts', pieces: ['p77'], count: 6, spare: 0, short: 0 }] },
      },
    ],
  ])('%s', (_, body) => {
    const entry = written(body)
    expect(() => fold([...entries, entry])).toThrow(UnlawfulEntry)
    expect(() => fold([...entries, entry])).toThrow(`entry ${entry.n}`)
  })

  test.each<[string, object]>([
    ['a check', asked({})],
    ['a verdict', judged({})],
    ['a comparison', compared({})],
    ['a finding', found({ triggers: ['h1'] })],
    ['a list', listed('h9', 'p1')],
    ['an order', lined({ piece: 'p1' })],
    ['an outing', sentOut({})],
    ['sealant', putOn({ before: [1, 'start'] })],
    ['a new piece', newPiece('p1')],
  ])('and %s that follows from it is', (_, body) => {
    const entry = written(body)
    expect(fold([...entries, entry]).seq).toBe(entry.n)
  })
})

/** The entry as it stands in a file: its shape is right. */
function written(body: object): Entry {
  return parseEntry(JSON.parse(JSON.stringify(numbered(body as EntryBody, entries.length + 1))))
}
