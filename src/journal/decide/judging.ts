import type { PieceId } from '../../ledger/piece.ts'
import { withinReach } from '../../plan/contents.ts'
import { boundTo, openChecks } from '../../plan/judging.ts'
import type { CheckFacts, CheckId } from '../../plan/judging-facts.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownPiece, lawful, refuse, unknown, wholeCount } from './refuse.ts'
import { gather } from './supply.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Checks that hang on pieces from now on. */
export function askChecks(state: State, { checks }: Of<'ask-checks'>): EntryBodyOf<'checks-set'> {
  if (checks.length === 0) refuse({ code: 'text-missing', what: 'text' })
  return {
    type: 'checks-set',
    checks: checks.map(({ piece, kind, what }, index) => {
      knownPiece(state, piece)
      return { id: checkId(state, index), piece, kind, what: what.map((each) => each.trim()).filter(Boolean) }
    }),
  }
}

/** Checks turned out well. */
export function passChecks(state: State, { checks, says }: Of<'pass-checks'>): EntryBodyOf<'checks-done'> {
  for (const id of checks) knownCheck(state, id)
  return { type: 'checks-done', checks, says: says?.trim() || undefined }
}

/** A check is not needed after all. */
export function dropCheck(state: State, { check, reason }: Of<'drop-check'>): EntryBodyOf<'check-dropped'> {
  return { type: 'check-dropped', check: knownCheck(state, check).id, reason: given(reason, 'reason') }
}

/** A verdict on pieces; what belongs together with them is judged along where they are to be replaced. */
export function judge(state: State, command: Of<'judge'>): EntryBodyOf<'judged'> {
  const { pieces, count, verdict, picture } = command
  for (const piece of pieces) knownPiece(state, piece)
  const along =
    verdict === 'replace' && count === undefined ? pieces.flatMap((piece) => boundTo(state, piece)) : []
  const checks =
    verdict === 'fit-again' ? pieces.flatMap((piece) => openChecks(state, piece).map(({ id }) => id)) : []
  return {
    type: 'judged',
    of: [...pieces],
    along: [...new Set(along)].filter((piece) => !pieces.includes(piece)),
    verdict,
    reason: given(command.reason, 'reason'),
    checks,
    picture,
    count,
    moves: count === undefined ? [] : lawful(state, outOfLot(state, pieces[0] as PieceId, wholeCount(count))),
  }
}

/** Pieces belong together: judged bad, one takes the others along. */
export function bind(state: State, { pieces, reason }: Of<'bind'>): EntryBodyOf<'bound'> {
  for (const piece of pieces) knownPiece(state, piece)
  return { type: 'bound', of: [...new Set(pieces)], reason }
}

/** The number of the next check, or of one further on in the same entry. */
export function checkId(state: State, index = 0): CheckId {
  return `k${state.dealt.check + 1 + index}`
}

function knownCheck(state: State, id: CheckId): CheckFacts {
  return state.checks.get(id) ?? unknown('check', id)
}

function outOfLot(state: State, piece: PieceId, count: number) {
  return gather(withinReach(state, knownPiece(state, piece)), count).map((part) => ({
    piece,
    count: part.count,
    from: part.place,
    to: 'scrap' as const,
  }))
}
