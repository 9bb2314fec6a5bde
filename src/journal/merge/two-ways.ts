import type { Entry } from '../entry.ts'

/** Where two copies of a job stand: what both have, and what each has alone. */
export interface TwoWays {
  /** What both have, from the first entry on that does not stand at the same place in both. */
  moved: { here: Entry; there: Entry }[]
  onlyHere: Entry[]
  onlyThere: Entry[]
  /** What both have, as it stands here and as it stands in the copy. */
  both: { here: Entry[]; there: Entry[] }
  /** Whether the copy is this journal with more behind it. */
  isLonger: boolean
}

/** Finds where two copies went apart. Entries are the same by their ids, wherever they stand. */
export function twoWays(ours: readonly Entry[], theirs: readonly Entry[]): TwoWays {
  const different = ours.findIndex(({ id }, index) => theirs[index]?.id !== id)
  const together = different < 0 ? ours.length : different
  const here = new Map(ours.slice(together).map((entry) => [entry.id, entry]))
  const there = theirs.slice(together)
  const known = new Set(there.map(({ id }) => id))
  return {
    moved: there.flatMap((entry) => {
      const same = here.get(entry.id)
      return same ? [{ here: same, there: entry }] : []
    }),
    onlyHere: ours.slice(together).filter(({ id }) => !known.has(id)),
    onlyThere: there.filter(({ id }) => !here.has(id)),
    both: {
      here: ours.filter(({ id }, index) => index < together || known.has(id)),
      there: theirs.filter(({ id }, index) => index < together || here.has(id)),
    },
    isLonger: together === ours.length,
  }
}
