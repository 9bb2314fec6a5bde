import { expect, test } from 'vitest'
import { belongsInToolbox, isMatched, type Piece, type PieceKind } from '../../src/ledger/piece.ts'

const piece = (kind: PieceKind, position?: string): Piece => ({
  id: 'p1',
  kind,
  name: 'piece',
  home: { at: 'head', position },
  should: 1,
  step: 1,
})

test.each<[PieceKind, string | undefined, boolean, boolean]>([
  ['part', 'I3', true, false],
  ['part', undefined, false, false],
  ['fastener', '4', true, false],
  ['fastener', undefined, false, false],
  ['connection', 'radiator', true, false],
  ['aid', undefined, false, true],
  ['tool', undefined, false, true],
])('%s at %s: matched %s, of the toolbox %s', (kind, position, matched, ofToolbox) => {
  expect(isMatched(piece(kind, position))).toBe(matched)
  expect(belongsInToolbox(piece(kind, position))).toBe(ofToolbox)
})

test('a piece with shared positions is common: any of them may go to any', () => {
  expect(isMatched({ ...piece('fastener'), home: { at: 'head', alikeAt: ['1', '2'] } })).toBe(false)
})
