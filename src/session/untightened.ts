import { areMates } from '../journal/decide/mates.ts'
import type { State } from '../journal/state.ts'
import type { Account } from '../ledger/account.ts'

/**
 * The fasteners of a step for which no tightening was set. Many need none in the record; but nobody would notice one
 * that was forgotten, so they are named when the step is closed.
 */
export function untightened(state: State, step: number): Account[] {
  const set = [...state.tightenings.values()].flatMap(({ piece, with: others = [] }) => [piece, ...others])
  const joints = set.flatMap((id) => state.ledger.accounts.get(id) ?? [])
  return [...state.ledger.accounts.values()].filter(
    (account) =>
      account.piece.step === step &&
      account.piece.kind === 'fastener' &&
      account.should > 0 &&
      !joints.some(
        (joint) => joint === account || (joint.piece.set !== undefined && areMates(joint, account)),
      ),
  )
}
