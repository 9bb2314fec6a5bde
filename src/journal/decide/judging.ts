import type { Account, Move } from '../../ledger/account.ts'
import { belongsInToolbox, isMatched, type PieceId } from '../../ledger/piece.ts'
import { withinReach } from '../../plan/contents.ts'
import type { MeasureId } from '../../plan/facts.ts'
import { readingsFor, readingsOf } from '../../plan/judging/check-readings.ts'
import { boundTo, openChecks } from '../../plan/judging/judging.ts'
import type { CheckFacts, CheckId } from '../../plan/judging/judging-facts.ts'
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
      wantedPiece(state, piece)
      return { id: checkId(state, index), piece, kind, what: what.map((each) => each.trim()).filter(Boolean) }
    }),
  }
}

/**
 * Checks turned out well. What was to be measured has to be measured first; a measurement out of its limits is answered by
 * a verdict, and one too close to call at least by words.
 */
export function passChecks(state: State, { checks, says }: Of<'pass-checks'>): EntryBodyOf<'checks-done'> {
  if (checks.length === 0) refuse({ code: 'text-missing', what: 'text' })
  const words = says?.trim() || undefined
  const measures = new Set<MeasureId>()
  for (const id of checks) {
    const check = openCheck(state, id)
    if (check.kind !== 'measure') continue
    const { readings, missing, verdict } = readingsFor(state, check)
    if (missing.length > 0) refuse({ code: 'check-unmeasured', check: id, missing })
    if (verdict === 'out' || (verdict === 'too-close' && words === undefined))
      refuse({ code: 'check-not-in', check: id, verdict, readings })
    for (const { measure } of readings) measures.add(measure.id)
  }
  const [measure] = measures
  return {
    type: 'checks-done',
    checks: [...new Set(checks)],
    says: words,
    ...(measures.size === 1 && { measure }),
  }
}

/** A check is not needed after all. */
export function dropCheck(state: State, { check, reason }: Of<'drop-check'>): EntryBodyOf<'check-dropped'> {
  return { type: 'check-dropped', check: openCheck(state, check).id, reason: given(reason, 'reason') }
}

/** A verdict on pieces; what belongs together with them is judged along where they are to be replaced. */
export function judge(state: State, command: Of<'judge'>): EntryBodyOf<'judged'> {
  const { verdict, picture } = command
  const pieces = [...new Set(command.pieces)]
  if (pieces.length === 0) refuse({ code: 'text-missing', what: 'name' })
  const accounts = pieces.map((piece) => wantedPiece(state, piece))
  if (picture !== undefined && !state.pictures.has(picture)) unknown('picture', picture)
  const count = partOf(accounts, command)
  const along =
    verdict === 'replace' && count === undefined ? pieces.flatMap((piece) => alongWith(state, piece)) : []
  const measure = lastMeasure(state, pieces)
  const checks =
    verdict === 'fit-again' ? pieces.flatMap((piece) => openChecks(state, piece).map(({ id }) => id)) : []
  return {
    type: 'judged',
    of: pieces,
    along: [...new Set(along)].filter((piece) => !pieces.includes(piece)),
    verdict,
    reason: given(command.reason, 'reason'),
    checks,
    ...(measure && { measure }),
    picture,
    count,
    moves: count === undefined ? [] : lawful(state, outOfLot(state, pieces[0] as PieceId, count)),
  }
}

/** Pieces belong together: judged bad, one takes the others along. */
export function bind(state: State, { pieces, reason }: Of<'bind'>): EntryBodyOf<'bound'> {
  const all = [...new Set(pieces)]
  for (const piece of all) wantedPiece(state, piece)
  const [only] = all
  if (all.length < 2 && only) refuse({ code: 'nothing-to-bind', piece: only })
  if (all.length < 2) refuse({ code: 'text-missing', what: 'name' })
  return { type: 'bound', of: all, reason: reason?.trim() || undefined }
}

/** The number of the next check, or of one further on in the same entry. */
export function checkId(state: State, index = 0): CheckId {
  return `k${state.dealt.check + 1 + index}`
}

/** A piece that belongs on the machine: nothing is asked of aids, nor of what has left. */
export function wantedPiece(state: State, id: PieceId): Account {
  const account = knownPiece(state, id)
  if (belongsInToolbox(account.piece) || account.should === 0) refuse({ code: 'not-for-home', piece: id })
  return account
}

/** What is judged along with a piece, and is not condemned already. */
export function alongWith(state: State, piece: PieceId): PieceId[] {
  return boundTo(state, piece).filter(
    (other) => knownPiece(state, other).should > 0 && state.verdicts.get(other)?.verdict !== 'replace',
  )
}

function openCheck(state: State, id: CheckId): CheckFacts {
  const check = state.checks.get(id) ?? unknown('check', id)
  if (check.done !== null) refuse({ code: 'check-done', check: id })
  return check
}

/** So many of a lot of which nobody tells one from another; undefined where all of it is judged. */
function partOf(accounts: readonly Account[], { count, verdict }: Of<'judge'>): number | undefined {
  const [account] = accounts
  if (count === undefined || !account) return undefined
  wholeCount(count)
  const { piece, should } = account
  const isLot = accounts.length === 1 && !isMatched(piece) && should > 1
  if (count === should && accounts.length === 1) return undefined
  // Within a lot nobody could tell those to be machined from the others: they leave it, or are judged with it.
  if (!isLot || verdict !== 'replace') refuse({ code: 'judge-part', piece: piece.id, count, verdict })
  return count
}

/** The last measurement of what is judged: the ground it stands on. */
function lastMeasure(state: State, pieces: readonly PieceId[]): MeasureId | undefined {
  const measures = pieces.flatMap((piece) => readingsOf(state, piece).map(({ measure }) => measure.id))
  return measures.toSorted((a, b) => Number(a.slice(1)) - Number(b.slice(1))).at(-1)
}

function outOfLot(state: State, piece: PieceId, wanted: number): Move[] {
  const lies = withinReach(state, knownPiece(state, piece))
  const there = lies.reduce((sum, { count }) => sum + count, 0)
  if (there < wanted) refuse({ code: 'not-within-reach', piece, wanted, there, lies })
  return gather(lies, wanted).map((part) => ({
    piece,
    count: part.count,
    from: part.place,
    to: 'scrap' as const,
  }))
}
