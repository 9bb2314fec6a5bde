import type { Account } from '../../ledger/account.ts'
import { isMatched } from '../../ledger/piece.ts'
import type { TighteningFacts, TighteningId } from '../../plan/facts.ts'
import { notHome } from '../../plan/reasons.ts'
import { nextTurn, type Pass } from '../../plan/tightening.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { refuseUnlessUnderWay } from './build.ts'
import { areMates, matesOf } from './mates.ts'
import { given, knownPiece, knownStep, refuse, unknown } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Sets the passes of a tightening, as the machine's manual gives them, and the order of the fasteners. */
export function setTightening(
  state: State,
  { piece: id, passes, order }: Of<'set-tightening'>,
): EntryBodyOf<'tightening-set'> {
  const { piece, home, should } = knownPiece(state, id)
  // What does not go back is not tightened.
  if (should === 0) refuse({ code: 'not-for-home', piece: id })
  const names = fastenerNames(state, id)
  const wanted = order ?? names
  const missing = names.filter((name) => !wanted.includes(name))
  const unknownNames = wanted.filter((name) => !names.includes(name))
  const twice = wanted.filter((name, index) => wanted.indexOf(name) !== index)
  if (missing.length + unknownNames.length + twice.length > 0) {
    refuse({ code: 'order-wrong', missing, unknown: unknownNames, twice })
  }
  if (passes.length === 0) refuse({ code: 'text-missing', what: 'text' })
  if (passes.length > 20 || wanted.length > 200)
    refuse({ code: 'count-wrong', count: Math.max(passes.length, wanted.length) })
  for (const pass of passes) wholePass(pass)
  const known = tighteningOf(state, id)
  // New passes would wipe out what was turned, and the doubt about a bolt that may have been.
  if (known && (known.suspect || known.done.some((done) => done.size > 0)))
    refuse({ code: 'tightening-begun', tightening: known.id })
  const tighteningId: TighteningId = known?.id ?? `t${state.dealt.tightening + 1}`
  return {
    type: 'tightening-set',
    tightening: {
      id: tighteningId,
      name: `${home.at}: ${piece.name}`,
      piece: id,
      step: piece.step,
      passes,
      order: wanted,
    },
  }
}

/** One fastener through one pass: the next in order, unless a name is given to check against it. */
export function tighten(
  state: State,
  { tightening: asked, fastener }: Of<'tighten'>,
): EntryBodyOf<'tightened'> {
  const tightening = asked ? (state.tightenings.get(asked) ?? unknown('tightening', asked)) : current(state)
  const { id, suspect } = tightening
  refuseUnlessUnderWay(knownStep(state, tightening.step))
  const reasons = membersOf(state, tightening.piece).flatMap((account) => notHome(state, account))
  if (reasons.length > 0) refuse({ code: 'step-blocked', step: tightening.step, gate: 'finish', reasons })
  const next = nextTurn(tightening)
  if (!next) refuse({ code: 'all-turned', tightening: id })
  if (suspect) refuse({ code: 'angle-suspect', tightening: id, fastener: suspect.fastener })
  if (fastener !== undefined && fastener !== next.fastener) {
    if (!tightening.order.includes(fastener)) refuse({ code: 'no-such-fastener', tightening: id, fastener })
    const turned = tightening.done[next.pass]?.has(fastener)
    refuse({ code: turned ? 'turned-already' : 'out-of-turn', tightening: id, fastener, next: next.fastener })
  }
  return { type: 'tightened', tightening: id, pass: next.pass, fastener: next.fastener }
}

/** A bolt that an interruption left in doubt: the user says whether it had been turned. */
export function settleAngle(
  state: State,
  { tightening: id, turned, reason }: Of<'settle-angle'>,
): EntryBodyOf<'angle-settled'> {
  const tightening = state.tightenings.get(id) ?? unknown('tightening', id)
  if (!tightening.suspect) refuse({ code: 'not-suspect', tightening: id })
  return {
    type: 'angle-settled',
    tightening: id,
    fastener: tightening.suspect.fastener,
    turned,
    reason: given(reason, 'reason'),
  }
}

/** All fasteners backed off: every pass is to be done again. */
export function slacken(state: State, { tightening: id, reason }: Of<'slacken'>): EntryBodyOf<'slackened'> {
  const tightening = state.tightenings.get(id) ?? unknown('tightening', id)
  refuseUnlessUnderWay(knownStep(state, tightening.step))
  return { type: 'slackened', tightening: id, reason: given(reason, 'reason') }
}

/** The fasteners of a piece by name: the positions of its set, or the numbers of common ones. */
function fastenerNames(state: State, id: TighteningFacts['piece']): string[] {
  const account = knownPiece(state, id)
  if (isMatched(account.piece)) return membersOf(state, id).map(({ home }) => home.position ?? '')
  return account.home.alikeAt ?? Array.from({ length: account.should }, (_, index) => String(index + 1))
}

function wholePass(pass: Pass): void {
  if (pass.kind === 'snug') return
  const value = pass.kind === 'angle' ? pass.degrees : pass.newtonMetres
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) refuse({ code: 'count-wrong', count: value })
}

function membersOf(state: State, id: TighteningFacts['piece']) {
  const account = knownPiece(state, id)
  return account.piece.set === undefined ? [account] : matesOf(state, account)
}

function tighteningOf(state: State, piece: TighteningFacts['piece']): TighteningFacts | undefined {
  const account = knownPiece(state, piece)
  const isOfItsSet = (other: Account) => account.piece.set !== undefined && areMates(account, other)
  return [...state.tightenings.values()].find(
    (tightening) => tightening.piece === piece || isOfItsSet(knownPiece(state, tightening.piece)),
  )
}

function current(state: State): TighteningFacts {
  const step = state.build
  const open = [...state.tightenings.values()].find(
    (tightening) => tightening.step === step && nextTurn(tightening),
  )
  return open ?? refuse({ code: 'no-tightening', step })
}
