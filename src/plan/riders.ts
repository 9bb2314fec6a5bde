import type { Ledger } from '../ledger/account.ts'
import { holdingsAt } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import { owedAtHome } from './contents.ts'
import type { PlanFacts } from './facts.ts'
import { forebears } from './succession.ts'

/** Some of a piece that sits on another. */
export interface Riding {
  piece: PieceId
  on: PieceId
  count: number
}

/** What sits on a piece, on what sits on it, and so on: nearest first. */
export function ridersOf(ledger: Ledger, carrier: PieceId): Riding[] {
  const found: Riding[] = []
  const open = [carrier]
  for (let on = open.shift(); on !== undefined; on = open.shift()) {
    for (const { piece, count } of holdingsAt(ledger, on)) {
      found.push({ piece, on, count })
      open.push(piece)
    }
  }
  return found
}

/** What sits on a piece and is to go home itself: not what was replaced, is used up, or is to be replaced. */
export function owedRiders(facts: PlanFacts, carrier: PieceId): Riding[] {
  return ridersOf(facts.ledger, carrier).filter(({ piece }) => {
    const account = facts.ledger.accounts.get(piece)
    if (!account || owedAtHome(facts, account) <= 0 || facts.used.has(piece)) return false
    return facts.verdicts.get(piece)?.verdict !== 'replace'
  })
}

/** What is still on the old ones, of which a piece has the home: it goes over before the new one goes in. */
export function leftOnOld(facts: PlanFacts, piece: PieceId): Riding[] {
  return forebears(facts, piece).flatMap((old) => owedRiders(facts, old))
}
