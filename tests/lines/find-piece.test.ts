import { describe, expect, test } from 'vitest'
import { decide } from '../../src/journal/decide/decide.ts'
import { foldOn } from '../../src/journal/fold.ts'
import { emptyState } from '../../src/journal/state.ts'
import { findPieces, findPiecesEver, nearPieces } from '../../src/lines/find-piece.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { numbered, openJob, record } from '../support/record.ts'
import { told, topEnd } from './told.ts'

const state = told(...topEnd, 'new 8 head bolts', 'off 4 M6x40 pump cover bolts into bag 1')
const named = (words: string) =>
  findPieces(words, state).map((id) => {
    const account = state.ledger.accounts.get(id)
    return `${account?.piece.name} ${account?.home.position ?? ''}`.trim()
  })

describe('a piece is found by', () => {
  test.each([
    ['p1', ['valve cover bolts']],
    ['valve cover bolts', ['valve cover bolts']],
    ['Valve Cover Bolt', ['valve cover bolts']],
    ['the valve cover', ['valve cover']],
    ['M6x25', ['valve cover bolts']],
    ['cover bolts', ['valve cover bolts', 'pump cover bolts']],
    ['cam cap I3', ['cam caps I3']],
    ['i3', ['cam caps I3']],
    ['I3 cam cap', ['cam caps I3']],
    ['cap', ['cam caps I1', 'cam caps I2', 'cam caps I3', 'cam caps I4']],
    ['radiator', ['coolant hose radiator']],
    ['left tap', ['left vacuum hose left tap']],
    ['rag inlet port 1', ['rags']],
    ['gasket cylinder head', ['head gasket']],
    ['stud', ['exhaust studs']],
    ['exh studs', ['exhaust studs']],
  ])('%s', (words, pieces) => {
    expect(named(words)).toEqual(pieces)
  })

  test.each(['', 'p99', 'p0', 'rotor', 'cam cap X9', 'xyz'])('nothing: %j', (words) => {
    expect(named(words)).toEqual([])
  })

  test('its whole name and size, before another one that has the name of its home', () => {
    const two = told(
      'begin starter casing',
      'off 4 M6x25 starter bolts into bag',
      'off 4 M6x25 drive bolts into bag',
    )
    const [first] = findPieces('starter bolts', two)
    expect(findPieces('starter bolts M6x25', two)).toEqual([first])
    expect(findPieces('starter casing M6x25', two)).toHaveLength(2)
  })

  test('what is in use, before what it took the place of', () => {
    const [found, ...more] = findPieces('head bolts', state)
    expect(more).toEqual([])
    expect(state.ledger.accounts.get(found ?? 'p0')?.piece.replaces).toBe('p20')
  })

  test('the old one, when asked for it, or both', () => {
    expect(findPieces('old head bolts', state)).toEqual(['p20'])
    expect(findPiecesEver('head bolts', state)).toEqual(['p20', expect.not.stringContaining('p20')])
    expect(findPieces('old valve cover', state)).toEqual([])
  })

  test('a preference, as long as anything is left by it', () => {
    const bolts = findPieces('cover bolts', state, ({ piece }) => piece.size === 'M6x40')
    expect(bolts).toEqual(findPieces('pump cover bolts', state))
    expect(findPieces('cover bolts', state, () => false)).toHaveLength(2)
  })
})

describe('near words that name nothing', () => {
  test('are pieces that share a word, or nearly', () => {
    expect(nearPieces('valv cover screw', state)).toContain('p1')
    expect(nearPieces('crankshaft', state)).toEqual([])
  })
})

test('by what it is called now, where it was looked for before under what it was called then', () => {
  const { entries } = record([openJob])
  let state = foldOn(emptyState(), entries, entries)
  const say = (line: string) => {
    const reading = readLine(line, state)
    if (reading.kind !== 'commands') throw new Error(`not commands: ${line}`)
    for (const command of reading.commands) {
      const decision = decide(state, command)
      if (!decision.ok) throw new Error(JSON.stringify(decision.refusal))
      const entry = numbered(decision.body, state.seq + 1)
      entries.push(entry)
      state = foldOn(state, entries, [entry])
    }
  }
  const counts = (...words: string[]) => words.map((each) => findPieces(each, state).length)
  say('off shims E1, E2 into bench')
  say('off hose: tap > pump')
  expect(counts('shims 2.45', 'E2', 'tap hose', 'pump spigot')).toEqual([0, 1, 1, 0])
  say('size shims: E1 2.45, E2 2.50')
  say('rehome hose at tap to pump spigot because it was written down wrongly')
  expect(counts('shims 2.45', 'E2', 'pump spigot')).toEqual([1, 1, 1])
})
