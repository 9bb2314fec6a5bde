import type { Account } from '../../ledger/account.ts'
import { belongsInToolbox, type PieceId } from '../../ledger/piece.ts'
import type { PlanFacts } from '../facts.ts'
import { ordersFor } from './order-lines.ts'

/** Why a home is short: judged to be replaced, the wrong one came, single-use and used, broken, lost, not there at the start. */
export type ShortWhy = 'replace' | 'wrong' | 'single-use' | 'broken' | 'lost' | 'missing'

export interface Shortage {
  /** How many the home asks for beyond those that can go there or are there. */
  short: number
  /** What it adds up from, in the order of `ShortWhy`. */
  parts: { why: ShortWhy; count: number }[]
}

/** How many new ones the home of a piece needs, wherever the usable ones are: 0 for aids, tools and what was replaced. */
export function shortageOf(facts: PlanFacts, account: Account): Shortage {
  const { piece, should } = account
  if (belongsInToolbox(piece) || should === 0) return { short: 0, parts: [] }
  const why = whyUnusable(facts, account.piece.id)
  const at = (place: 'machine' | 'scrap' | 'lost') => account.at.get(place) ?? 0
  // What is on the machine was judged there, or was never taken off; else it would not be on it.
  if (why !== null) {
    const short = why === 'replace' ? should : Math.max(0, should - at('machine'))
    return { short, parts: short > 0 ? [{ why, count: short }] : [] }
  }
  const short = Math.max(0, should - usable(facts, account))
  const broken = Math.min(short, at('scrap'))
  const lost = Math.min(short - broken, at('lost'))
  const all = [
    { why: 'broken' as const, count: broken },
    { why: 'lost' as const, count: lost },
    { why: 'missing' as const, count: short - broken - lost },
  ]
  return { short, parts: all.filter(({ count }) => count > 0) }
}

/** Why none of a lot can go home, so that another takes its home without being told to; null where it can. */
export function whyUnusable(facts: PlanFacts, piece: PieceId): 'replace' | 'wrong' | 'single-use' | null {
  if (facts.verdicts.get(piece)?.verdict === 'replace') return 'replace'
  if (facts.comparisons.get(piece)?.verdict === 'wrong') return 'wrong'
  return facts.used.has(piece) ? 'single-use' : null
}

/** All that entered, but for what is scrapped, lost, or went back to where it came from. */
function usable(facts: PlanFacts, { piece, entered, at }: Account): number {
  const atSupplier = at.get('supplier') ?? 0
  const returned =
    atSupplier === 0 ? 0 : ordersFor(facts, piece.id).reduce((sum, order) => sum + order.returned, 0)
  const backThere = Math.min(atSupplier, returned)
  return entered - (at.get('scrap') ?? 0) - (at.get('lost') ?? 0) - backThere
}
