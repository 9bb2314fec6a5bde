import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import { matchedOff, off, putOn, replace, strip } from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const rename = (piece: PieceId, name: string): Command => ({ do: 'rename-piece', piece, name })

describe('a piece gets another name', () => {
  const job = given(strip('cover off'), matchedOff(['I1', 'I2'], 'cam caps'), off(6, 'bolts'))
  const names = (after: typeof job) =>
    [...after.state.ledger.accounts.values()].map(({ piece }) => `${piece.id} ${piece.name}`)

  test('common ones alone, a set as a whole, also the one that was replaced', () => {
    expect(names(job.and(rename('p3', 'Schrauben')))).toEqual(['p1 cam caps', 'p2 cam caps', 'p3 Schrauben'])
    expect(names(job.and(rename('p2', 'bearing caps')))).toEqual([
      'p1 bearing caps',
      'p2 bearing caps',
      'p3 bolts',
    ])
    const replaced = job.and(replace('p1', 1), rename('p2', 'bearing caps'))
    expect(names(replaced)).not.toContain('p1 cam caps')
    expect(names(replaced)).toContain('p4 bearing caps')
  })

  test('and everything about it stays: home, count and place', () => {
    const renamed = job.and(rename('p1', 'bearing caps'))
    const before = job.state.ledger.accounts.get('p1')
    expect(renamed.state.ledger.accounts.get('p1')).toEqual({
      ...before,
      piece: { ...before?.piece, name: 'bearing caps' },
    })
    renamed.when(putOn('p1', 'I2')).refuses('law', { violation: { law: 'not-its-position', own: 'I1' } })
  })

  test('the undo gives the old name back', () => {
    expect(names(job.and(rename('p3', 'studs'), { do: 'undo' }))).toEqual(names(job))
  })

  test('refused: none, what nobody knows, and one that would be the second of its name at a position', () => {
    job.when(rename('p3', ' ')).refuses('text-missing')
    job.when(rename('p9', 'studs')).refuses('unknown')
    const two = given(strip('cover off'), matchedOff(['I1'], 'cam caps'), matchedOff(['I1', 'I2'], 'caps'))
    two.when(rename('p3', 'cam caps')).refuses('name-taken', { piece: 'p1' })
    two.when(rename('p1', 'bearing caps')).makes('renamed')
  })
})
