import { referencesOf } from '../journal/merge/references.ts'
import type { Refusal } from '../journal/refusal.ts'
import type { Session } from './session.ts'
import type { Entry } from './stored-entry.ts'

/** A refusal as it is; of an entry that was to be taken back and is not the last any more, with what it is and what stands on it. */
export function withEntryMeant(
  refusal: Refusal,
  entries: readonly Entry[],
  inForce: Session['state']['inForce'],
): Refusal {
  if (refusal.code !== 'written-since') return refusal
  const was = entries.find(({ n }) => n === refusal.entry)
  if (!was) return refusal
  const numbers = new Set(inForce)
  const later = entries.filter(({ n }) => n > was.n && numbers.has(n))
  const things = thingsOf(was)
  const standing = later.filter((entry) =>
    referencesOf(entry).some((each) => things.has(`${each.kind} ${each.no}`)),
  )
  return { ...refusal, was, standing: standing.map(({ n }) => n), since: later.length }
}

/** What an entry brought into the record, and where it brought nothing, what it says something of. */
function thingsOf(entry: Entry): ReadonlySet<string> {
  const references = referencesOf(entry)
  const dealt = references.filter(({ isNew }) => isNew)
  // A step that it began, or a bag that it opened, is where the most of what follows went.
  const isOwn = ({ kind }: { kind: string }) => kind !== 'step' && kind !== 'container'
  const meant =
    [dealt.filter(isOwn), dealt, references.filter(isOwn), references].find((each) => each.length > 0) ?? []
  return new Set(meant.map(({ kind, no }) => `${kind} ${no}`))
}
