import type { Account } from '../ledger/account.ts'
import { singular } from '../trade/bag-line/nouns.ts'

/**
 * Bolts, screws and nuts behind the part that their name says they hold, `cover bolts` behind `valve cover`, however
 * they were written down: whoever notes the cover first would be told to put its bolts on without it. A stud or a dowel
 * goes on before what sits on it, and a name that says nothing is left where it is.
 */
export function behindWhatTheyHold(accounts: readonly Account[]): Account[] {
  const lastOf = new Map<string, number>()
  for (const [index, { piece }] of accounts.entries()) {
    if (piece.kind === 'part') lastOf.set(wordsOf(piece.name).at(-1) ?? '', index)
  }
  const placed = accounts.map((account, index) => {
    const held = heldBy(account).map((noun) => lastOf.get(noun) ?? -1)
    return { account, at: Math.max(index, ...held.map((each) => each + 0.5)) }
  })
  return placed.toSorted((a, b) => a.at - b.at).map(({ account }) => account)
}

const HOLDS_DOWN = /^(?:(?:cap|set)?(?:screw|bolt)|nut)$/

/** The nouns before its own, where it is one that holds parts down. */
function heldBy({ piece }: Account): string[] {
  if (piece.kind !== 'fastener') return []
  const words = wordsOf(piece.name.replace(/,.*/, ''))
  return HOLDS_DOWN.test(words.at(-1) ?? '') ? words.slice(0, -1) : []
}

function wordsOf(name: string): string[] {
  return name.split(' ').map(singular)
}
