import { expect, test } from 'vitest'
import { fold } from '../../src/journal/fold.ts'
import { holdingsIn, placesOf } from '../../src/ledger/ledger.ts'
import { nextTurn } from '../../src/plan/tightening.ts'
import { liesAt, liesIn, nextFastener } from '../../src/words/lookups.ts'
import { emptyHome, shelfIn } from '../ui/support/bench.ts'

// Words may import types only, so they look a few things up themselves: at every moment of a job as the core does.
test('what the words look up is what the ledger and the plan say, after each entry of the demo job', () => {
  const shelf = shelfIn(emptyHome())
  const entries = shelf.open(shelf.addDemo()).entries()
  let turns = 0
  for (const { n } of entries) {
    const state = fold(entries.slice(0, n))
    const { ledger } = state
    for (const id of ledger.accounts.keys()) expect(liesAt(state, id)).toEqual(placesOf(ledger, id))
    for (const no of state.containers.keys()) expect(liesIn(state, no)).toEqual(holdingsIn(ledger, no))
    for (const tightening of [...state.tightenings.values(), ...state.loosenings.values()]) {
      const next = nextTurn(tightening)
      expect(nextFastener(tightening)).toEqual(next && { pass: next.pass, fastener: next.fastener })
      turns += 1
    }
  }
  expect(turns).toBeGreaterThan(100)
})
