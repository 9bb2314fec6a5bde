import type { Ledger } from '../../src/ledger/account.ts'
import { emptyLedger, enter, openAccount, post } from '../../src/ledger/ledger.ts'
import type { Piece } from '../../src/ledger/piece.ts'

export const bolts: Piece = {
  id: 'p1',
  kind: 'fastener',
  name: 'bolt',
  home: { at: 'cover' },
  should: 6,
  step: 1,
}
const capI1: Piece = {
  id: 'p2',
  kind: 'part',
  name: 'cap',
  home: { at: 'head', position: 'I1' },
  should: 1,
  step: 2,
}
const rag: Piece = { id: 'p3', kind: 'aid', name: 'rag', home: { at: 'port' }, should: 0, step: 2 }
const longBolts: Piece = {
  id: 'p4',
  kind: 'fastener',
  name: 'long bolt',
  home: { at: 'pump', alikeAt: ['2', '5'] },
  should: 2,
  step: 3,
}

/** Six bolts and a cap in bag 1, two long bolts in slots of tray 2, a rag in the toolbox. */
export function apart(): Ledger {
  const ledger = emptyLedger()
  for (const piece of [bolts, capI1, rag, longBolts]) openAccount(ledger, piece)
  enter(ledger, { piece: 'p1', count: 6, at: 'machine' })
  enter(ledger, { piece: 'p2', count: 1, at: 'machine' })
  enter(ledger, { piece: 'p3', count: 2, at: 'toolbox' })
  enter(ledger, { piece: 'p4', count: 2, at: 'machine' })
  post(ledger, [
    { piece: 'p1', count: 6, from: 'machine', to: 'c1' },
    { piece: 'p2', count: 1, from: 'machine', to: 'c1' },
    { piece: 'p4', count: 1, from: 'machine', to: 'c2/1' },
    { piece: 'p4', count: 1, from: 'machine', to: 'c2/2' },
  ])
  return ledger
}
