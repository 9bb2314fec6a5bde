import type { Entry } from '../entry.ts'
import { type Conflict, Merge } from './merge.ts'
import { twoWays } from './two-ways.ts'

/** What becomes of the entries of a copy of the job, written down elsewhere since the two went apart. */
export interface MergePlan {
  /** Entries of the copy that are not here, in their order and as they are to be written here. */
  fits: readonly Entry[]
  /** Containers of the copy whose number is another container here: their paper labels must be written anew. */
  renumbered: readonly { there: number; here: number }[]
  conflicts: readonly Conflict[]
  /** How many entries are here and not in the copy. */
  onlyHere: number
}

export type MergeRefusal = 'other-job' | 'nothing-new'

/**
 * Plans what of a copy of the job is taken over, entry by entry. What was left out by an earlier merge is not asked
 * about again, and so is what says nothing: a stop without words, and what was taken back there and speaks of what is
 * not here. Both are sound records, in their order; throws UnlawfulEntry where one is not.
 */
export function planMerge(
  ours: readonly Entry[],
  theirs: readonly Entry[],
): { ok: true; plan: MergePlan } | { ok: false; why: MergeRefusal } {
  if (!ours[0] || ours[0].id !== theirs[0]?.id) return { ok: false, why: 'other-job' }
  const ways = twoWays(ours, theirs)
  const { onlyHere, onlyThere } = ways
  if (!onlyThere.some(isNews)) return { ok: false, why: 'nothing-new' }
  if (ways.isLonger)
    return { ok: true, plan: { fits: onlyThere, renumbered: [], conflicts: [], onlyHere: 0 } }
  const { fits, renumbered, conflicts } = new Merge(ours, theirs, ways).sort()
  if (conflicts.length === 0 && !fits.some(isNews)) return { ok: false, why: 'nothing-new' }
  return { ok: true, plan: { fits, renumbered, conflicts, onlyHere: onlyHere.length } }
}

/** That a merge took all of another record says nothing new: taken to and fro, each such note would be answered by one more. */
function isNews(entry: Entry): boolean {
  return entry.type !== 'merged' || entry.leftOut.length > 0
}
