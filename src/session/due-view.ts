import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import { checksByPiece, standingOf } from '../plan/judging/judging.ts'
import type { CheckFacts, ComparisonFacts, VerdictFacts } from '../plan/judging/judging-facts.ts'
import { isGone } from '../plan/succession.ts'
import { type MissingView, missingViews } from './missing-views.ts'
import { type OrderView, orderView } from './order-view.ts'
import { type OutingView, outingView } from './outing-view.ts'

/** All that is judged and awaited in a job, each thing in one group only. */
export interface DueView {
  /** Outings and order lines whose day is over, the longest overdue first. */
  late: (OutingView | OrderView)[]
  /** Checks to do, by piece or matched set. */
  checks: DueChecks[]
  /** New pieces to be held beside the old one, and those that are wrong. */
  comparisons: ComparisonFacts[]
  /** Pieces judged, and what the verdict asks for still to come. */
  judged: { piece: PieceId; verdict: VerdictFacts }[]
  /** Away and not late, or back and nobody has said what was taken out there. */
  outings: OutingView[]
  /** Wanted, ordered, partly here or wrong, and not late. */
  orders: OrderView[]
  /** Missing or broken, until it is put right or somebody decides to leave it so. */
  missing: MissingView[]
}

/** The checks to do on a piece, or on all pieces of a matched set. */
export interface DueChecks {
  /** The first of them stands for the set. */
  pieces: PieceId[]
  checks: CheckFacts[]
}

/** What is due on the day of the state's clock. */
export function dueView(state: State): DueView {
  const outings = [...state.outings.values()]
    .map((outing) => outingView(state, outing))
    .filter(({ standing }) => standing !== 'back')
  const orders = [...state.orders.values()]
    .map((order) => orderView(state, order))
    .filter(({ open }) => open > 0)
  const checks = checksByPiece(state)
  return {
    late: [
      ...outings.filter(({ standing }) => standing === 'overdue'),
      ...orders.filter(({ standing }) => standing === 'late'),
    ].sort((one, other) => (dueOf(one) < dueOf(other) ? -1 : 1)),
    checks: checksDue(state),
    comparisons: [...state.comparisons.values()].filter(
      ({ piece, verdict }) => verdict !== 'right' && isStillWanted(state, piece) && !isGone(state, piece),
    ),
    judged: [...state.verdicts].flatMap(([piece, verdict]) => {
      const standing = standingOf(state, piece, checks.get(piece) ?? [])
      const isOpen = standing === 'machine' || standing === 'clean' || standing === 'replace'
      return isOpen && isStillWanted(state, piece) ? [{ piece, verdict }] : []
    }),
    outings: outings.filter(({ standing }) => standing !== 'overdue'),
    orders: orders.filter(({ standing }) => standing !== 'late'),
    missing: missingViews(state),
  }
}

function dueOf(thing: OutingView | OrderView): string {
  return ('outing' in thing ? thing.outing : thing.order).due ?? ''
}

function checksDue(state: State): DueChecks[] {
  const groups = new Map<string, DueChecks>()
  for (const check of state.checks.values()) {
    const account = state.ledger.accounts.get(check.piece)
    if (!account || check.done !== null || state.overrides.has(check.id)) continue
    // What is judged stands among the judged, with its checks on its page; what gave its home away is asked nothing.
    const isJudged = (state.verdicts.get(check.piece)?.verdict ?? 'fit-again') !== 'fit-again'
    if (isJudged || !isStillWanted(state, check.piece)) continue
    const { set, id } = account.piece
    const key = set === undefined ? id : `${set} ${account.home.at}`
    const group = groups.get(key) ?? { pieces: [], checks: [] }
    groups.set(key, group)
    if (!group.pieces.includes(id)) group.pieces.push(id)
    group.checks.push(check)
  }
  return [...groups.values()]
}

/** Whether its home waits for it, or for what takes its place. */
function isStillWanted(state: State, piece: PieceId): boolean {
  return (state.ledger.accounts.get(piece)?.should ?? 0) > 0
}
