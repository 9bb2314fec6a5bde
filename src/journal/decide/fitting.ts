import type { Account, Move } from '../../ledger/account.ts'
import { owedAtHome, withinReach } from '../../plan/contents.ts'
import { judgingReasons } from '../../plan/judging/judging.ts'
import { owedRiders, ridersOf } from '../../plan/riders.ts'
import { forebears } from '../../plan/succession.ts'
import type { Fitting } from '../command.ts'
import type { State } from '../state.ts'
import { knownPiece, lawful, refuse, wholeCount } from './refuse.ts'
import { gather } from './supply.ts'

/** The moves that put a piece home: with what sits on it, and with the used old one to scrap once all of it is home. */
export function fittingMoves(state: State, { count, position }: Fitting, account: Account): Move[] {
  const { piece } = account
  const owed = owedAtHome(state, account)
  const wanted = count === undefined ? owed : wholeCount(count)
  const lies = withinReach(state, account)
  const there = lies.reduce((sum, lying) => sum + lying.count, 0)
  // Judged before anything else, so that the wrong bag or position is named even when other things are wrong too.
  if (there > 0)
    lawful(state, [{ piece: piece.id, count: 1, from: lies[0]?.place ?? 'bench', to: 'machine', position }])
  if (owed <= 0) refuse({ code: account.should === 0 ? 'not-for-home' : 'home-already', piece: piece.id })
  refuseUnfit(state, account)
  if (there < wanted) refuse({ code: 'not-within-reach', piece: piece.id, wanted, there, lies })
  const home = gather(lies, wanted).map((part): Move => homeMove(account, part, position))
  return [
    ...home,
    ...riderMoves(state, account, wanted, there),
    ...(wanted === owed ? wornOutMoves(state, account) : []),
  ]
}

/** What is used, condemned, or not found right yet is refused by name, in a step under way as well. */
function refuseUnfit(state: State, { piece: { id } }: Account): void {
  if (state.used.has(id)) refuse({ code: 'piece-used', piece: id })
  const reasons = judgingReasons(state, id)
  if (reasons.length > 0) refuse({ code: 'not-accepted', piece: id, reasons })
}

/** What sits on a piece goes home with it: of several alike that carry as many each, its share. */
function riderMoves(state: State, { piece }: Account, fitted: number, there: number): Move[] {
  return ridersOf(state.ledger, piece.id).flatMap(({ piece: id, on, count }): Move[] => {
    const rider = knownPiece(state, id)
    const share = on === piece.id && fitted < there ? Math.floor((count * fitted) / there) : count
    if (share === 0) return []
    if (rider.should === 0) refuse({ code: 'not-for-home', piece: id })
    if (rider.piece.step !== piece.step)
      refuse({ code: 'not-in-step', piece: id, step: piece.step, own: rider.piece.step })
    refuseUnfit(state, rider)
    return [homeMove(rider, { place: on, count: share }, rider.home.position)]
  })
}

/** Used old ones whose home is filled again go to scrap in the same act, unless they were kept when they were compared. */
function wornOutMoves(state: State, { piece }: Account): Move[] {
  const compared = state.comparisons.get(piece.id)?.old
  return forebears(state, piece.id)
    .filter((old) => state.used.has(old) && old !== compared && owedRiders(state, old).length === 0)
    .flatMap((old) => scrapMoves(state, knownPiece(state, old)))
}

/** What of an old piece lies within reach, and what sits on it, goes to scrap. Declared spares stay. */
export function scrapMoves(state: State, account: Account): Move[] {
  const own = withinReach(state, account).filter(({ place }) => place !== 'spare')
  if (own.length === 0) return []
  const riders = ridersOf(state.ledger, account.piece.id)
  return [
    ...riders.map(({ piece, on, count }): Move => ({ piece, count, from: on, to: 'scrap' })),
    ...own.map(({ place, count }): Move => ({ piece: account.piece.id, count, from: place, to: 'scrap' })),
  ]
}

function homeMove(
  { piece }: Account,
  { place, count }: { place: Move['from']; count: number },
  position: string | undefined,
): Move {
  return { piece: piece.id, count, from: place, to: 'machine', position }
}
