import type { State } from '../../journal/state.ts'
import type { JudgingReason } from '../../plan/judging.ts'
import type { ComparisonView } from '../../session/comparison-view.ts'
import { say } from '../cures.ts'
import { joined } from '../grammar.ts'
import { liesAt } from '../lookups.ts'
import { agree, liesText, pieceName } from '../pieces.ts'

type CompareReason = Extract<JudgingReason, { code: 'compare-due' | 'compare-wrong' }>

/** Why a new piece does not take the home of the old one yet: what is to be compared, or what is wrong with it. */
export function compareParts(
  state: State,
  { code, piece, old }: CompareReason,
): { what: string; cure: string } {
  return code === 'compare-due' ? dueParts(state, piece, old) : wrongParts(state, piece)
}

function dueParts(state: State, piece: CompareReason['piece'], old: CompareReason['old']) {
  const what = `${pieceName(state, piece)} not compared with the old ${agree(state, old, 'one', 'ones')}, ${old}, ${liesText(state, old)}`
  const isGone = liesAt(state, old).every(({ place }) => place === 'scrap' || place === 'lost')
  const cure = isGone
    ? `${say(`judge ${piece} fit again because ...`)} with how you know that ${agree(state, piece, 'it is right', 'they are right')}`
    : `lay them side by side, then ${say(`compare ${piece}: alike`)}, or ${say(`compare ${piece}`)} for what to look at`
  return { what, cure }
}

function wrongParts(state: State, piece: CompareReason['piece']) {
  const wrong = (state.comparisons.get(piece)?.features ?? []).filter(({ how }) => how === 'wrong')
  const said = wrong.map(({ feature, says }) =>
    feature === 'the whole' && says ? says : says ? `${feature}: ${says}` : feature,
  )
  const what = `${pieceName(state, piece)} ${agree(state, piece, 'is', 'are')} wrong${said.length > 0 ? ` (${joined(said)})` : ''}`
  const isGone = liesAt(state, piece).every(({ place }) => place === 'supplier' || place === 'scrap')
  const back = isGone ? '' : `${say(`send back ${piece} because ...`)}, and `
  return {
    what,
    cure: `${back}${say(`new ${piece}`)} when the right ${agree(state, piece, 'one is', 'ones are')} here`,
  }
}

/** How a comparison stands, in one line: `water pump (p9) beside the old one, p5 in bag 3: not done yet`. */
export function compareLine(
  state: State,
  { piece, old, verdict, says }: Omit<ComparisonView, 'features'>,
): string {
  return `${pieceName(state, piece)} (${piece}), ${liesText(state, piece)}, beside the old ${agree(state, old, 'one', 'ones')}, ${old}, ${liesText(state, old)}: ${STANDS[verdict]}${says ? `, ${says}` : ''}`
}

/** One feature with what was said of it: `ports  alike`. */
export function featureLine({ feature, how, says }: ComparisonView['features'][number]): string {
  return how === null ? feature : `${feature}  ${LIKENESS[how]}${says ? `, ${says}` : ''}`
}

const STANDS = { due: 'not compared yet', right: 'compared, and right', wrong: 'WRONG' }
const LIKENESS = { alike: 'alike', differs: 'differs, but right', wrong: 'WRONG' }
