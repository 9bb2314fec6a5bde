import { type ComparisonView, comparisonsDue, comparisonView } from '../../session/comparison-view.ts'
import type { Session } from '../../session/session.ts'
import { say } from '../../words/cures.ts'
import { compareLine, featureLine } from '../../words/judging/compare-words.ts'
import { pieceName } from '../../words/pieces.ts'

/** What a new piece is held beside the old one for, numbered; or every piece for which that is due. */
export function compareAnswer(
  session: Session,
  piece: ComparisonView['piece'] | null,
): { text: string[]; answer: unknown } {
  const { state } = session
  if (piece === null) {
    const due = comparisonsDue(state)
    const text = due.map((view) => `${view.piece}  ${compareLine(state, view)}`)
    return { text: text.length > 0 ? text : ['Nothing is to be compared.'], answer: due }
  }
  const view = comparisonView(state, piece)
  if (view === null) {
    return { text: [`${pieceName(state, piece)} (${piece}) has no old one to be held beside.`], answer: null }
  }
  return { text: [compareLine(state, view), ...features(view), ...next(view)], answer: view }
}

function features({ features: all }: ComparisonView): string[] {
  return all.map((each, index) => `  ${index + 1}  ${featureLine(each)}`)
}

function next({ piece, verdict, features: all }: ComparisonView): string[] {
  if (verdict === 'right') return []
  const open = all.findIndex(({ how }) => how === null)
  const first =
    open < 0
      ? ''
      : `${say(`compare ${piece}: ${open + 1} alike`)}, or ${say(`compare ${piece}: ${open + 1} differs ...`)} and ${say(`compare ${piece}: ${open + 1} wrong ...`)} with what; `
  return [`  ${first}${say(`compare ${piece}: rest alike`)} when all the rest is`]
}
