import type { State } from '../../journal/state.ts'
import type { Place } from '../../ledger/place.ts'
import type { JudgingReason } from '../../plan/judging/judging.ts'
import type { ComparisonView } from '../../session/comparison-view.ts'
import { homeWords, newWords, say, sendWords } from '../cures.ts'
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
  const away = awayWords(state, piece)
  if (away !== null) return { what, cure: away }
  const isGone = liesAt(state, old).every(({ place }) => place === 'scrap' || place === 'lost')
  const cure = isGone
    ? `${say(`judge ${piece} fit again because ...`)} with how you know that ${agree(state, piece, 'it is right', 'they are right')}`
    : `lay them side by side, then ${say(`compare ${piece}: alike`)}, or ${say(`compare ${piece}`)} for what to look at`
  return { what, cure }
}

/** What brings a new piece here, before it can be held beside the old one; null where some of it is here. */
function awayWords(state: State, piece: CompareReason['piece']): string | null {
  const lying = liesAt(state, piece)
  const isAway = (place: Place) => ['out', 'supplier', 'scrap', 'lost'].includes(place)
  const [first] = lying
  if (!first || lying.some(({ place }) => !isAway(place))) return null
  const { place, count } = first
  if (place === 'scrap') return `${say(`new ${count > 1 ? `${count} ` : ''}${piece}`)} when here`
  if (place === 'lost')
    return `${sendWords(state, 'move', piece, place, { count, to: 'bench' })} when found, then compare`
  return `${homeWords(state, piece, count, place)}, then compare`
}

function wrongParts(state: State, piece: CompareReason['piece']) {
  const wrong = (state.comparisons.get(piece)?.features ?? []).filter(({ how }) => how === 'wrong')
  const said = wrong.map(({ feature, says }) =>
    feature === 'the whole' && says ? says : says ? `${feature}: ${says}` : feature,
  )
  const what = `${pieceName(state, piece)} ${agree(state, piece, 'is', 'are')} wrong${said.length > 0 ? ` (${joined(said)})` : ''}`
  return {
    what,
    cure: `${say(`send back ${piece} because ...`)}, and ${newWords(state, piece, piece)} when the right ${agree(state, piece, 'one is', 'ones are')} here`,
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
