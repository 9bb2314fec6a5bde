import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { OutingFacts } from '../../plan/waiting/waiting-facts.ts'
import { dayText, dueText } from '../days.ts'
import { countedPieces } from '../pieces.ts'

/** Who has what went out: `at Miller`, `lent to job 12, Red twin`. */
export function holderName({ to, job }: Pick<OutingFacts, 'to' | 'job'>): string {
  return `${job === undefined ? 'at' : 'lent to'} ${to}`
}

/** The same, with the number of the outing: `at Miller (b1)`. */
export function holderText(outing: OutingFacts): string {
  return `${holderName(outing)} (${outing.id})`
}

/** Who has it, since when, and until when: `at Miller (b1) since 28 Nov, due 1 Dec, 3 days late`. */
export function outingStanding({ clock }: State, outing: OutingFacts): string {
  const { since, due } = outing
  const until = due === undefined ? '' : `, ${dueText(due, clock.today)}`
  return `${holderText(outing)} since ${dayText(since, clock.today)}${until}`
}

/** The outings that have some of a piece, the first that went first. */
function outingsOf(state: State, id: PieceId): OutingFacts[] {
  return [...state.outings.values()].filter(({ pieces }) =>
    pieces.some(({ piece, away }) => piece === id && away > 0),
  )
}

/** Where a piece is that is out, with who has it: `out, at Miller (b1) since 28 Nov`. */
export function outWhere(state: State, piece: PieceId): string {
  const out = outingsOf(state, piece).map((outing) => outingStanding(state, outing))
  return ['out', ...out].join(', ')
}

/** What is typed to record that a piece is back: all that went with it, or that piece alone; null where nobody said to whom it went. */
export function backWords(state: State, piece: PieceId): string | null {
  const [outing] = outingsOf(state, piece)
  if (!outing) return null
  const away = outing.pieces.filter((each) => each.away > 0)
  return `came back ${away.length === 1 ? outing.id : piece}`
}

/** What of an outing is still away: `cylinder head and 2 × gallery plugs`. */
export function awayPieces(state: State, { pieces }: OutingFacts): string {
  const away = pieces.map((each) => ({ piece: each.piece, count: each.away }))
  return countedPieces(
    state,
    away.filter(({ count }) => count > 0),
  )
}

/** One line of an outing that is late: `OVERDUE b1, cylinder head at Miller, due 1 Dec, 3 days late`. */
export function overdueText(state: State, outing: OutingFacts): string {
  const { id, due = '' } = outing
  return `OVERDUE ${id}, ${awayPieces(state, outing)} ${holderName(outing)}, ${dueText(due, state.clock.today)}`
}
