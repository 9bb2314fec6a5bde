import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import { leftOnOld, type Riding } from '../plan/riders.ts'
import { sizeAgreement } from '../trade/size-agreement.ts'
import { threadInSize } from '../trade/size-text.ts'
import { type ComparisonView, comparisonView } from './comparison-view.ts'
import type { Entry } from './stored-entry.ts'

/** What is worth a look when a new piece takes the place of an old one. */
export type ReplacingHeed =
  /** It is to be held beside the old one. */
  | { heed: 'to-compare'; view: ComparisonView }
  /** What sat on the old one, and goes over to it. */
  | { heed: 'goes-over'; piece: PieceId; riders: Riding[] }
  /** Its thread is another than that of the old one. */
  | { heed: 'other-thread'; piece: PieceId; size: string; old: PieceId; oldSize: string }
  /** Every feature was said, and nobody has said yet that the rest is alike as well. */
  | { heed: 'compare-rest'; piece: PieceId }
  /** It is wrong: it goes back, and its home waits for the next. */
  | { heed: 'wrong-one'; piece: PieceId }

/** What to say beside an entry by which a new piece came, or was held beside the old one. */
export function replacingHeeds(state: State, entry: Entry): ReplacingHeed[] {
  if (entry.type === 'compared') {
    const view = comparisonView(state, entry.piece)
    if (entry.verdict === 'wrong') return [{ heed: 'wrong-one', piece: entry.piece }]
    const isAllSaid = entry.verdict === 'due' && view?.features.every(({ how }) => how !== null)
    return isAllSaid ? [{ heed: 'compare-rest', piece: entry.piece }] : []
  }
  if (entry.type !== 'supplied') return []
  return entry.pieces.flatMap(({ id, size, replaces }): ReplacingHeed[] => {
    const view = entry.compare?.some(({ piece }) => piece === id) ? comparisonView(state, id) : null
    const riders = leftOnOld(state, id)
    return [
      ...otherThread(state, id, size, replaces),
      ...(view ? [{ heed: 'to-compare' as const, view }] : []),
      ...(riders.length > 0 ? [{ heed: 'goes-over' as const, piece: id, riders }] : []),
    ]
  })
}

/** Two threads that are known and do not agree in size or pitch: which of the two is right is the user's to say. */
function otherThread(
  state: State,
  piece: PieceId,
  size: string | undefined,
  old: PieceId | undefined,
): ReplacingHeed[] {
  const oldSize = old === undefined ? undefined : state.ledger.accounts.get(old)?.piece.size
  if (size === undefined || old === undefined || oldSize === undefined) return []
  const [fresh, before] = [threadInSize(size), threadInSize(oldSize)]
  if (!fresh || !before) return []
  const { thread, pitch } = sizeAgreement({ thread: fresh }, { thread: before })
  return thread === 'no' || pitch === 'no' ? [{ heed: 'other-thread', piece, size, old, oldSize }] : []
}
