import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { ComparisonFacts, Likeness } from '../plan/judging-facts.ts'
import { featuresFor } from '../trade/inspection/compare-features.ts'

/** A new piece beside the old one: each feature with what was said of it, the proposed ones first. */
export interface ComparisonView {
  piece: PieceId
  old: PieceId
  verdict: ComparisonFacts['verdict']
  features: { feature: string; how: Likeness | null; says?: string | undefined }[]
}

/** How the comparison of a new piece stands; null where it has no old one to be held beside. */
export function comparisonView(state: State, piece: PieceId): ComparisonView | null {
  const comparison = state.comparisons.get(piece)
  const account = state.ledger.accounts.get(piece)
  if (!comparison || !account) return null
  const { old, verdict, features: said } = comparison
  const names = [...new Set([...featuresFor(account.piece.name), ...said.map(({ feature }) => feature)])]
  return {
    piece,
    old,
    verdict,
    features: names.map((feature) => {
      const { how = null, says } = said.find((each) => each.feature === feature) ?? {}
      return { feature, how, says }
    }),
  }
}

/** Every new piece that still waits to be compared, or was found wrong, while its home waits for it. */
export function comparisonsDue(state: State): ComparisonView[] {
  return [...state.comparisons.values()]
    .filter(({ piece, verdict }) => {
      return verdict !== 'right' && (state.ledger.accounts.get(piece)?.should ?? 0) > 0
    })
    .flatMap(({ piece }) => comparisonView(state, piece) ?? [])
}
