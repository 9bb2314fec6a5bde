import type { Entry } from '../entry.ts'

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

/** An entry of the copy that does not fit with what is here. */
export interface Conflict {
  /** As it stands in the copy. */
  entry: Entry
  /** The entries here that it does not fit with; empty where a law or what it follows on decides. */
  against: readonly Entry[]
  why: 'same-thing' | 'label-taken' | 'law' | 'follows'
}

export type MergeRefusal = 'other-job' | 'nothing-new'

/** Plans what of a copy of the job is taken over, entry by entry. Both are sound records, in order. */
export function planMerge(
  ours: readonly Entry[],
  theirs: readonly Entry[],
): { ok: true; plan: MergePlan } | { ok: false; why: MergeRefusal } {
  if (!ours[0] || ours[0].id !== theirs[0]?.id) return { ok: false, why: 'other-job' }
  const here = new Set(ours.map(({ id }) => id))
  const there = new Set(theirs.map(({ id }) => id))
  const fresh = theirs.filter(({ id }) => !here.has(id))
  if (fresh.length === 0) return { ok: false, why: 'nothing-new' }
  const fits = fresh.map((entry, index) => ({ ...entry, n: ours.length + index + 1 }))
  const onlyHere = ours.filter(({ id }) => !there.has(id)).length
  return { ok: true, plan: { fits, renumbered: [], conflicts: [], onlyHere } }
}
