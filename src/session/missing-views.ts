import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { DifferenceId, FaultId } from '../plan/facts.ts'
import { homeCount } from '../plan/found/home-count.ts'

/** What is missing or broken of a piece, as long as nobody has put it right or decided to leave it so. */
export interface MissingView {
  piece: PieceId
  step: number
  /** Owed at home and nowhere to be had. */
  short: number
  /** Of these: missing when the job began. */
  neverThere: number
  /** Lost, and nobody has said that they may stay so. A lost one that was replaced is among them. */
  lost: number
  /** Work that is left at its home, such as a stud snapped in its hole. */
  faults: FaultId[]
  /** Counts that came out short and are not explained. */
  differences: DifferenceId[]
}

/** What is missing or broken in a job, in the order of the record. */
export function missingViews(state: State): MissingView[] {
  const faults = [...state.faults.values()].filter(
    ({ id, settled }) => settled === null && !state.overrides.has(id),
  )
  return [...state.ledger.accounts.values()].flatMap((account): MissingView[] => {
    const { id, step, kind } = account.piece
    const count = homeCount(state, account)
    const isPart = kind !== 'aid' && kind !== 'tool'
    const view: MissingView = {
      piece: id,
      step,
      short: isPart ? count.short : 0,
      neverThere: isPart ? count.neverThere : 0,
      lost: Math.max(0, count.lost - (state.lostAccepted.get(id) ?? 0)),
      faults: faults.filter(({ piece }) => piece === id).map((fault) => fault.id),
      differences: count.countedShort.map(({ difference }) => difference),
    }
    const isMissing = view.short + view.lost + view.faults.length + view.differences.length > 0
    return isMissing ? [view] : []
  })
}
