import type { State } from '../journal/state.ts'
import { holdingsIn } from '../ledger/ledger.ts'
import { belongsInToolbox, type PieceId } from '../ledger/piece.ts'
import { isLast } from '../plan/order.ts'
import { proposals, ROUND } from '../plan/proposals.ts'

/** What lay in a container and was taken out of it. */
export interface LainIn {
  piece: PieceId
  count: number
  /** When the last of it was taken out; ISO 8601, in UTC. */
  at: string
}

/** A container to be tipped out before the first start. */
export interface ToTip {
  container: number
  lain: LainIn[]
  /** Whether the record has something in it still. */
  holds: boolean
  /** Whether it was counted on this round, and what is in it agrees. */
  agreed: boolean
}

/** Whether a step is the last of the way back: the round on which bags are tipped out. */
export function isLastRound(state: State, no: number): boolean {
  const step = state.steps.get(no)
  return step !== undefined && isLast(step)
}

/** The number by which `accept` takes the last round that the record suggests; null where there is one, or nothing to tip out. */
export function proposedRound(state: State): number | null {
  const at = proposals(state).findIndex(({ key }) => key === ROUND)
  return at === -1 ? null : at + 1
}

/** What lay in a container once and is elsewhere now. */
export function lainIn(state: State, container: number): LainIn[] {
  return [...(state.takenFrom.get(container) ?? [])].map(([piece, out]) => ({ piece, ...out }))
}

/** The containers that something was taken out of, by their numbers: a piece that is ticked and not fitted lies in one of them. */
export function toTip(state: State): ToTip[] {
  return [...state.takenFrom.keys()]
    .sort((a, b) => a - b)
    .filter((no) => isTipped(state, no))
    .map((container) => ({
      container,
      lain: lainIn(state, container),
      holds: holdingsIn(state.ledger, container).length > 0,
      agreed: state.agreed.has(container),
    }))
}

/** An aid or a tool, and how many of it the record has in the toolbox. */
export interface InToolbox {
  piece: PieceId
  count: number
}

/** What was put in for the work, and tools: all that the record has back in the toolbox, to be seen there. */
export function inToolbox(state: State): InToolbox[] {
  return [...state.ledger.accounts.values()].flatMap(({ piece, at }) => {
    const count = at.get('toolbox') ?? 0
    return belongsInToolbox(piece) && count > 0 ? [{ piece: piece.id, count }] : []
  })
}

/** A tag is tied to its piece: nothing lies in it. */
function isTipped(state: State, no: number): boolean {
  const container = state.containers.get(no)
  return container !== undefined && container.voided === null && container.kind !== 'tag'
}
