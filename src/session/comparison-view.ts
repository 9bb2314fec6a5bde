import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { ComparisonFacts, Likeness } from '../plan/judging/judging-facts.ts'
import { featuresFor } from '../trade/inspection/compare-features.ts'

/** A new piece beside the old one: each feature with what was said of it, the proposed ones first. */
export interface ComparisonView {
  piece: PieceId
  old: PieceId
  verdict: ComparisonFacts['verdict']
  features: { feature: string; how: Likeness | null; says?: string | undefined }[]
  /** What was said of the piece as a whole. */
  says?: string | undefined
}

/** How the comparison of a new piece stands; null where it has no old one to be held beside. */
export function comparisonView(state: State, piece: PieceId): ComparisonView | null {
  const comparison = state.comparisons.get(piece)
  const account = state.ledger.accounts.get(piece)
  if (!comparison || !account) return null
  const { old, verdict, features: said } = comparison
  const named = said.filter(({ feature }) => !isWhole(feature))
  const whole = said.findLast(({ feature }) => isWhole(feature))
  const names = [...new Set([...featuresFor(account.piece.name), ...named.map(({ feature }) => feature)])]
  return {
    piece,
    old,
    verdict,
    features: names.map((feature) => {
      const { how = whole?.how ?? null, says } = named.find((each) => each.feature === feature) ?? {}
      return { feature, how, says }
    }),
    ...(whole?.says !== undefined && { says: whole.says }),
  }
}

/** What is said of all features, or of those that are not named. */
function isWhole(feature: string): boolean {
  return feature === 'all' || feature === 'the rest' || feature === 'the whole'
}

/** Every new piece that still waits to be compared, or was found wrong, while its home waits for it. */
export function comparisonsDue(state: State): ComparisonView[] {
  return [...state.comparisons.values()]
    .filter(({ piece, verdict }) => {
      return verdict !== 'right' && (state.ledger.accounts.get(piece)?.should ?? 0) > 0
    })
    .flatMap(({ piece }) => comparisonView(state, piece) ?? [])
}
