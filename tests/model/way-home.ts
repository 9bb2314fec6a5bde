import type { Command } from '../../src/journal/command.ts'
import type { State } from '../../src/journal/state.ts'
import { balance, holdingsIn } from '../../src/ledger/ledger.ts'
import { outOfToolbox, owedAtHome, withinReach } from '../../src/plan/contents.ts'
import { Gates } from '../../src/plan/gates.ts'
import type { JudgingReason } from '../../src/plan/judging/judging.ts'
import { leftovers } from '../../src/plan/leftovers.ts'
import type { Reason } from '../../src/plan/reasons.ts'
import { owedRiders } from '../../src/plan/riders.ts'
import { nextTurn } from '../../src/plan/tightening.ts'
import { minutesToWait } from '../../src/plan/waiting/second-looks.ts'
import type { WaitingReason } from '../../src/plan/waiting/waiting-reasons.ts'

/**
 * What a patient mechanic would do next to bring the job to its first start and its end, or null when nothing
 * is left to do. It only chooses what to try: whether that is right is judged elsewhere.
 */
export function nextStepHome(state: State): Command | null {
  const gates = new Gates(state)
  if (state.closed) return null
  if (state.strip !== null) return { do: 'end-strip' }
  const suspect = [...state.tightenings.values()].find((tightening) => tightening.suspect)
  if (suspect) {
    return { do: 'settle-angle', tightening: suspect.id, turned: true, reason: 'the paint stripe says so' }
  }
  const underway = [...state.steps.values()].find(({ built }) => built === 'underway')
  if (underway) return finishing(state, gates, underway.no)
  if (state.cleared && !state.started) return { do: 'first-start' }
  const ready = gates.ready()[0]
  if (ready !== undefined) return { do: 'begin-build', step: ready }
  if (state.started && leftovers(gates).length === 0) return { do: 'close-job', note: 'handed over' }
  const blocked = [...state.steps.values()].find(
    (step) => step.way !== 'after-start' && !gates.isDone(step.no),
  )
  const reason = blocked && gates.start(blocked.no)[0]
  return (reason && lifting(state, gates, reason)) ?? tidying(state, gates)
}

/** Takes up a step, or lifts the first reason why it may not start yet: the needs of steps run in no ring. */
function beginning(state: State, gates: Gates, no: number): Command | null {
  const reason = gates.start(no)[0]
  return reason ? lifting(state, gates, reason) : { do: 'begin-build', step: no }
}

function finishing(state: State, gates: Gates, no: number): Command {
  const contents = gates.contentsOf(no)
  for (const account of contents.pieces) {
    const owed = owedAtHome(state, account)
    const { piece, home } = account
    if (owed <= 0) continue
    if (state.used.has(piece.id)) return { do: 'use-again', piece: piece.id, reason: 'measured and good' }
    const near = withinReach(state, account).reduce((sum, { count }) => sum + count, 0)
    if (near === 0) return bringing(state, piece.id, owed)
    return {
      do: 'fit',
      fittings: [{ piece: piece.id, position: home.position, count: Math.min(near, owed) }],
    }
  }
  const reason = gates.finish(no)[0]
  return (reason && lifting(state, gates, reason)) ?? { do: 'close-step', step: no, result: 'in order' }
}

function lifting(state: State, gates: Gates, reason: Reason): Command | null {
  switch (reason.code) {
    case 'piece-short':
    case 'piece-away':
      return bringing(state, reason.piece, 1)
    case 'check-due':
    case 'piece-judged':
    case 'compare-due':
    case 'compare-wrong':
      return judging(state, reason)
    case 'out-unanswered':
    case 'second-due':
    case 'consumable-due':
    case 'worked-late':
    case 'curing':
      return waiting(state, reason)
    case 'piece-used':
      return { do: 'use-again', piece: reason.piece, reason: 'measured and good' }
    case 'fault-open':
      return { do: 'settle-fault', fault: reason.fault, how: 'drilled out' }
    case 'count-open':
      return countingAgain(state, reason.difference)
    case 'aid-in':
      return { do: 'move', piece: reason.piece, from: 'machine', into: { kind: 'place', place: 'toolbox' } }
    case 'look-due':
      return { do: 'look', step: reason.step }
    case 'mark-open':
      return { do: 'confirm', mark: reason.mark }
    case 'tighten-open': {
      const tightening = state.tightenings.get(reason.tightening)
      return tightening && nextTurn(tightening) ? { do: 'tighten', tightening: reason.tightening } : null
    }
    case 'turns-open':
      return { do: 'turn-over', step: reason.step }
    case 'fluid-open':
      return { do: 'fill', fluid: reason.fluid, litres: 1, typed: '1 l' }
    case 'not-home':
      return {
        do: 'move',
        piece: reason.piece,
        count: reason.count,
        from: reason.place,
        into: { kind: 'place', place: 'bench' },
      }
    case 'step-before':
      return state.steps.get(reason.step)?.built === 'underway' ? null : beginning(state, gates, reason.step)
    default:
      return null
  }
}

/** What makes a piece one that may go back. Every third part is ordered, and every third of those is the wrong one. */
function judging(state: State, reason: JudgingReason): Command {
  const { piece } = reason
  const fitAgain: Command = {
    do: 'judge',
    pieces: [piece],
    verdict: 'fit-again',
    reason: 'measured and good',
  }
  const isOn = balance(state.ledger, piece, 'machine') > 0
  const order = [...state.orders.values()].find((line) => line.piece === piece && line.cancelled === null)
  switch (reason.code) {
    case 'check-due':
      return state.checks.get(reason.check)?.kind === 'measure'
        ? fitAgain
        : { do: 'pass-checks', checks: [reason.check] }
    case 'piece-judged':
      if (reason.verdict !== 'replace' || isOn) return fitAgain
      if (order?.ordered && order.arrived < order.count)
        return { do: 'receive', order: order.id, into: bench }
      if (isThird(piece) && !order)
        return { do: 'line-orders', lines: [{ piece, name: 'a new one', count: 1 }], ordered: true }
      return { do: 'supply', piece, count: 1, into: bench, instead: true }
    case 'compare-due':
      if (owedRiders(state, reason.old).length > 0) return { do: 'move-over', from: reason.old, to: piece }
      return {
        do: 'compare',
        piece,
        features: [],
        rest: isThird(piece) ? 'wrong' : 'alike',
        says: 'held beside it',
      }
    case 'compare-wrong': {
      const wrong = [...state.orders.values()].find((line) => line.wrong > 0)
      if (isOn) return fitAgain
      return wrong
        ? { do: 'return-order', order: wrong.id, reason: 'the wrong one' }
        : { do: 'supply', piece, count: 1, into: bench, instead: true }
    }
  }
}

/** What answers whoever waits: a moment is waited for while something is written down, what takes long is waved through. */
function waiting(state: State, reason: WaitingReason): Command {
  switch (reason.code) {
    case 'out-unanswered':
      return {
        do: 'come-back',
        outing: reason.outing,
        pieces: [],
        into: bench,
        tookOut: { text: 'nothing', items: [] },
      }
    case 'second-due': {
      const step = state.steps.get(reason.step)
      if (!step || minutesToWait(step, state.clock) === 0)
        return {
          do: 'see-again',
          step: reason.step,
          line: reason.line,
          says: 'looked at from the other side',
        }
      return (step.critical?.afterMinutes ?? 0) > 1 ? waiving(`check ${reason.step}`) : aMoment
    }
    case 'consumable-due':
      return { do: 'apply', consumable: reason.consumable }
    case 'worked-late':
      return waiving(reason.consumable)
    case 'curing':
      return Date.parse(reason.until) - Date.parse(state.clock.at) > 60_000
        ? waiving(reason.consumable)
        : aMoment
  }
}

const aMoment: Command = { do: 'note', kind: 'note', text: 'waiting a moment' }

const bench = { kind: 'place', place: 'bench' } as const

/** Brings pieces to the bench from where they are, or new ones from a supplier. */
function bringing(state: State, piece: `p${number}`, count: number): Command {
  const outing = [...state.outings.values()].find(({ pieces }) =>
    pieces.some((each) => each.piece === piece && each.away > 0),
  )
  const order = [...state.orders.values()].find(
    (line) => line.piece === piece && line.ordered && line.cancelled === null && line.arrived < line.count,
  )
  if (order) return { do: 'receive', order: order.id, into: bench }
  if (outing)
    return { do: 'come-back', outing: outing.id, into: bench, tookOut: { text: 'nothing', items: [] } }
  for (const place of ['out', 'supplier', 'toolbox', 'lost'] as const) {
    const there = balance(state.ledger, piece, place)
    if (there > 0)
      return {
        do: 'move',
        piece,
        count: there,
        from: place,
        into: { kind: 'place', place: 'bench' },
        reason: 'back again',
      }
  }
  if (isThird(piece) && ![...state.orders.values()].some((line) => line.piece === piece))
    return { do: 'line-orders', lines: [{ piece, name: 'more of it', count }], ordered: true }
  return { do: 'supply', piece, count, into: { kind: 'place', place: 'bench' }, instead: false }
}

/** Puts pieces home where they lie at hand, whatever their step says, or brings them there. */
function putting(state: State, piece: `p${number}`, count: number): Command {
  const account = state.ledger.accounts.get(piece)
  if (!account || withinReach(state, account).length === 0) return bringing(state, piece, count)
  return { do: 'fit', fittings: [{ piece, position: account.home.position, count }] }
}

function isThird(piece: `p${number}`): boolean {
  return Number(piece.slice(1)) % 3 === 0
}

function countingAgain(state: State, id: `d${number}`): Command | null {
  const difference = state.differences.get(id)
  if (!difference) return null
  const counts = new Map<`p${number}` | null, number>([[difference.piece, 0]])
  for (const { piece, count } of holdingsIn(state.ledger, difference.container))
    counts.set(piece, (counts.get(piece) ?? 0) + count)
  return {
    do: 'count',
    container: difference.container,
    counts: [...counts].map(([piece, counted]) => ({ piece, counted })),
  }
}

/** What is left when every step is done or cannot go on. */
function tidying(state: State, gates: Gates): Command | null {
  const found = leftovers(gates)[0]
  if (!found) return state.cleared ? null : { do: 'clear' }
  switch (found.code) {
    case 'old-lying':
    case 'tool-out':
    case 'aid-in': {
      const account = state.ledger.accounts.get(found.piece)
      const kit = account && outOfToolbox(state, account).length > 0
      const place = kit ? 'toolbox' : 'scrap'
      return {
        do: 'move',
        piece: found.piece,
        count: found.count,
        from: found.place,
        into: { kind: 'place', place },
      }
    }
    case 'piece-lost':
      return { do: 'accept-lost', piece: found.piece, reason: 'searched for an hour' }
    case 'piece-off':
    case 'piece-short':
      return reopening(state, found.step) ?? putting(state, found.piece, found.count)
    case 'count-open':
      return countingAgain(state, found.difference)
    case 'fault-open':
      return { do: 'settle-fault', fault: found.fault, how: 'drilled out' }
    case 'left-out-open':
      return { do: 'settle-left-out', leftOut: found.leftOut, how: 'looked, and it is so' }
    case 'mark-open':
      return waiving(found.mark)
    case 'fluid-open':
      return waiving(found.fluid)
    case 'tighten-open':
      return waiving(found.tightening)
    case 'eased-on':
      return waiving(found.loosening)
    case 'check-due':
    case 'piece-judged':
    case 'compare-due':
    case 'compare-wrong':
      return judging(state, found)
    case 'out-unanswered':
    case 'second-due':
    case 'consumable-due':
    case 'worked-late':
    case 'curing':
      return waiting(state, found)
    default:
      return null
  }
}

function reopening(state: State, step: number): Command | null {
  return state.steps.get(step)?.built === 'done'
    ? { do: 'reopen', steps: [step], reason: 'something was left off' }
    : null
}

function waiving(target: Extract<Command, { do: 'override' }>['target']): Command {
  return { do: 'override', target, reason: 'not on this machine' }
}
