import type { State } from '../journal/state.ts'
import { balance } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'

/** The same work done at several positions, one after the other, by one person. */
export interface RepeatedWork {
  step: number
  /** The pieces, in the order of the record. */
  pieces: PieceId[]
}

/**
 * From how many positions on a slip is made at all of them alike: what was understood wrongly at the first is done wrongly at
 * each. Common practice of those who inspect maintenance; the number is a choice of this program.
 */
const MANY = 3

/**
 * Matched pieces, or ends of connections, that one person put on at three positions or more in a step that is not critical.
 * Common fasteners are not among them: that they are tight is a matter of their tightening.
 */
export function repeatedWork(state: State, no: number): RepeatedWork[] {
  const step = state.steps.get(no)
  if (!step || step.critical || step.work?.by.length !== 1) return []
  const groups = new Map<string, PieceId[]>()
  for (const { piece, home } of state.ledger.accounts.values()) {
    if (piece.step !== no || home.position === undefined || balance(state.ledger, piece.id, 'machine') === 0)
      continue
    const key = piece.kind === 'connection' ? 'connection' : `${piece.set ?? piece.name} ${home.at}`
    groups.set(key, [...(groups.get(key) ?? []), piece.id])
  }
  return [...groups.values()].filter(({ length }) => length >= MANY).map((pieces) => ({ step: no, pieces }))
}
