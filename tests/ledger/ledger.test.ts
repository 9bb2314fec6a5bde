import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Move } from '../../src/ledger/account.ts'
import { auditLedger, brokenLaws, LawBroken } from '../../src/ledger/laws.ts'
import {
  accountOf,
  balance,
  emptyLedger,
  enter,
  holdingsAt,
  holdingsIn,
  openAccount,
  placesOf,
  post,
} from '../../src/ledger/ledger.ts'
import type { Place } from '../../src/ledger/place.ts'
import { containerOf } from '../../src/ledger/place.ts'
import { stateText } from '../support/record.ts'
import { apart, bolts } from './ledgers.ts'

describe('the ledger', () => {
  test('an account opens once', () => {
    const ledger = emptyLedger()
    openAccount(ledger, bolts)
    expect(() => openAccount(ledger, bolts)).toThrow(LawBroken)
    expect(accountOf(ledger, 'p1')).toMatchObject({ should: 6, entered: 0, home: { at: 'cover' } })
  })

  test('what a piece replaces came before it, so that no line of heirs is a circle', () => {
    const ledger = emptyLedger()
    expect(() => openAccount(ledger, { ...bolts, replaces: 'p1' })).toThrow(LawBroken)
    expect(() => openAccount(ledger, { ...bolts, replaces: 'p2' })).toThrow(LawBroken)
    openAccount(ledger, bolts)
    openAccount(ledger, { ...bolts, id: 'p2', replaces: 'p1' })
    expect(ledger.accounts.size).toBe(2)
  })

  test('none may be found, and less or half may not', () => {
    const ledger = emptyLedger()
    openAccount(ledger, bolts)
    enter(ledger, { piece: 'p1', count: 0, at: 'machine' })
    expect(placesOf(ledger, 'p1')).toEqual([])
    for (const count of [-1, 0.5])
      expect(() => enter(ledger, { piece: 'p1', count, at: 'machine' })).toThrow(LawBroken)
    expect(() => enter(ledger, { piece: 'p7', count: 1, at: 'machine' })).toThrow(LawBroken)
  })

  test('moves are carried out all or none', () => {
    const ledger = apart()
    const before = stateText(ledger)
    const moves: Move[] = [
      { piece: 'p1', count: 2, from: 'c1', to: 'bench' },
      { piece: 'p2', count: 1, from: 'c1', to: 'machine', position: 'E4' },
    ]
    expect(() => post(ledger, moves)).toThrow(LawBroken)
    expect(stateText(ledger)).toBe(before)
  })

  test('a place that is emptied is gone', () => {
    const ledger = apart()
    post(ledger, [{ piece: 'p1', count: 6, from: 'c1', to: 'bench' }])
    expect(placesOf(ledger, 'p1')).toEqual([{ piece: 'p1', place: 'bench', count: 6 }])
    expect(balance(ledger, 'p1', 'c1')).toBe(0)
    expect(holdingsIn(ledger, 1)).toEqual([{ piece: 'p2', place: 'c1', count: 1 }])
    expect(holdingsAt(ledger, 'bench')).toEqual([{ piece: 'p1', place: 'bench', count: 6 }])
    expect(holdingsAt(ledger, 'out')).toEqual([])
  })

  test('a tray is told slot by slot, and still holds its piece when one slot is emptied', () => {
    const ledger = apart()
    expect(holdingsIn(ledger, 2)).toEqual([
      { piece: 'p4', place: 'c2/1', count: 1 },
      { piece: 'p4', place: 'c2/2', count: 1 },
    ])
    post(ledger, [{ piece: 'p4', count: 1, from: 'c2/1', to: 'bench' }])
    expect(holdingsIn(ledger, 2)).toEqual([{ piece: 'p4', place: 'c2/2', count: 1 }])
    post(ledger, [{ piece: 'p4', count: 1, from: 'c2/2', to: 'bench' }])
    expect(holdingsIn(ledger, 2)).toEqual([])
    expect(ledger.byContainer.has(2)).toBe(false)
  })

  test('what nobody knows is nowhere', () => {
    expect(balance(apart(), 'p9', 'bench')).toBe(0)
    expect(placesOf(apart(), 'p9')).toEqual([])
    expect(() => accountOf(apart(), 'p9')).toThrow(LawBroken)
  })
})

const places: Place[] = [
  'machine',
  'bench',
  'out',
  'scrap',
  'spare',
  'lost',
  'toolbox',
  'c1',
  'c2',
  'c2/1',
  'c2/2',
]
const anyMove: fc.Arbitrary<Move> = fc.record({
  piece: fc.constantFrom('p1', 'p2', 'p3', 'p4', 'p9'),
  count: fc.integer({ min: -1, max: 7 }),
  from: fc.constantFrom(...places),
  to: fc.constantFrom(...places),
  position: fc.constantFrom(undefined, 'I1', 'I2', '2'),
})

test('whatever is moved: nothing appears, nothing vanishes, no place owes, and the look-ups agree', () => {
  fc.assert(
    fc.property(fc.array(fc.array(anyMove, { maxLength: 3 }), { maxLength: 40, size: 'max' }), (batches) => {
      const ledger = apart()
      for (const moves of batches) {
        const before = stateText(ledger)
        if (brokenLaws(ledger, moves).length === 0) post(ledger, moves)
        else {
          expect(() => post(ledger, moves)).toThrow(LawBroken)
          expect(stateText(ledger)).toBe(before)
        }
        expect(auditLedger(ledger)).toEqual([])
        for (const place of places) {
          const there = [...ledger.accounts.keys()].filter((piece) => balance(ledger, piece, place) > 0)
          expect(
            holdingsAt(ledger, place)
              .map(({ piece }) => piece)
              .sort(),
          ).toEqual(there)
        }
        for (const container of [1, 2]) {
          const there = [...ledger.accounts.keys()].flatMap((piece) =>
            placesOf(ledger, piece).filter(({ place }) => containerOf(place) === container),
          )
          expect(new Set(holdingsIn(ledger, container))).toEqual(new Set(there))
        }
      }
    }),
    { numRuns: 300 },
  )
})
