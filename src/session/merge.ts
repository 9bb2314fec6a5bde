import type { Command } from '../journal/command.ts'
import { decide } from '../journal/decide/decide.ts'
import { ENTRY_VERSION, type Entry } from '../journal/entry.ts'
import { fold, foldOn } from '../journal/fold.ts'
import { lawfulPart } from '../journal/lawful-part.ts'
import { type MergePlan, type MergeRefusal, planMerge } from '../journal/merge/plan-merge.ts'
import { type InHand, whereWorkGoesOn } from '../journal/merge/where-work-goes-on.ts'
import { MOST_LEFT_OUT } from '../journal/shapes/merging.ts'
import { namedHere } from './merged-pictures.ts'
import type { Session, WritingNow } from './session.ts'

/** What does not fit, with what stands here against it. */
export type Conflict = MergePlan['conflicts'][number]

export interface CopyPlan extends MergePlan {
  /** Whether the copy has all that is here: the two were merged there. */
  isAhead: boolean
}

/** A copy of the job that is to be brought together with its record. */
export interface Merging {
  /** The entries of the copy, all of them, sound and in order. */
  theirs: readonly Entry[]
  /** Where the copy lies. */
  copy: string
  /** The name of the file that keeps its journal, where it is kept. */
  kept: string | undefined
  /** Whether somebody has seen what does not fit: then it is left out, and bags get the numbers that are free here. */
  isTaken: boolean
  /** The names that pictures of the copy got here, by the SHA-256 of their bytes. */
  pictures: ReadonlyMap<string, string>
  /** An entry of the copy in words. */
  tell(entry: Entry): string
}

export interface NoMerge {
  kind: 'none'
  why: MergeRefusal
}

export type MergeOutcome =
  | { kind: 'merged'; entries: readonly Entry[]; plan: CopyPlan }
  /** Something of it is to be seen first: nothing was written. */
  | { kind: 'to-decide'; plan: CopyPlan }
  | NoMerge
  /** The entry that would have that number tells what cannot be. */
  | { kind: 'unlawful'; n: number }
  | { kind: 'not-recorded'; error: Error }

/** Whether somebody has to see what a merge comes to before it is written. */
export function isToDecide({ conflicts, renumbered }: MergePlan): boolean {
  return conflicts.length > 0 || renumbered.length > 0
}

/** What a merge comes to, on both records as they are. */
export function planCopy(
  ours: readonly Entry[],
  theirs: readonly Entry[],
): { kind: 'planned'; plan: CopyPlan } | NoMerge {
  const planned = planMerge(ours, theirs)
  if (!planned.ok) return { kind: 'none', why: planned.why }
  return { kind: 'planned', plan: { ...planned.plan, isAhead: hasAll(theirs, ours) } }
}

/** Whether a record has all that another has, as entries of its own or as what a merge has left out. */
function hasAll(record: readonly Entry[], other: readonly Entry[]): boolean {
  const has = new Set(
    record.flatMap((entry) => [
      entry.id,
      ...(entry.type === 'merged' ? entry.leftOut.map((each) => each.entry) : []),
    ]),
  )
  return other.every(({ id }) => has.has(id))
}

/**
 * Brings a copy of the job together with its record: planned on what the journal holds at this moment, and written in one
 * go. Where something is to be seen first, or nothing is new, nothing is written.
 */
export function mergeCopy(session: Session, asked: Merging): MergeOutcome {
  let made: Made | undefined
  const written = session.writeTogether((now) => {
    made = makeMerge(asked, now)
    return made.kind === 'made' ? made.entries : null
  })
  if (written.kind === 'not-recorded') return written
  if (made?.kind === 'made') return { kind: 'merged', entries: written.entries, plan: made.plan }
  return made as Exclude<Made, { kind: 'made' }>
}

type Made =
  | { kind: 'made'; entries: Entry[]; plan: CopyPlan }
  | { kind: 'to-decide'; plan: CopyPlan }
  | { kind: 'unlawful'; n: number }
  | NoMerge

/** Everything that a merge writes: what fits, and behind it what was left out. */
function makeMerge(asked: Merging, { entries: ours, clock, seal }: WritingNow): Made {
  const planned = planCopy(ours, asked.theirs)
  if (planned.kind !== 'planned') return planned
  const { plan } = planned
  if (!asked.isTaken && isToDecide(plan)) return { kind: 'to-decide', plan }
  const fits = namedHere(ours, plan.fits, asked.pictures)
  const all = [...ours, ...fits.map((entry) => ({ ...entry, v: ENTRY_VERSION }))]
  // What would not read back as a lawful record is never written behind one that is.
  let { state, unlawful } = lawfulPart(all)
  if (unlawful) return { kind: 'unlawful', n: unlawful.n }
  // Where nothing was written here, work goes on where the copy left it.
  const inHand = plan.onlyHere > 0 ? whereWorkGoesOn(fold(ours), state, fits) : undefined
  for (const note of notes(plan, asked, inHand)) {
    const decision = decide(state, note, clock)
    if (!decision.ok) throw new Error(`a merge was refused: ${decision.refusal.code}`)
    const entry = seal(decision.body, all.length + 1)
    all.push(entry)
    state = foldOn(state, all, [entry])
  }
  return { kind: 'made', entries: all.slice(ours.length), plan }
}

/** One command that notes the merge; more where more is left out than an entry has room for. */
function notes(
  plan: CopyPlan,
  { copy, kept, tell }: Merging,
  inHand: InHand | undefined,
): Extract<Command, { do: 'note-merge' }>[] {
  const leftOut = plan.conflicts.map(({ entry }) => ({
    entry: entry.id,
    at: entry.at,
    by: entry.by,
    says: tell(entry),
  }))
  const parts = Array.from({ length: Math.max(1, Math.ceil(leftOut.length / MOST_LEFT_OUT)) }, (_, part) =>
    leftOut.slice(part * MOST_LEFT_OUT, (part + 1) * MOST_LEFT_OUT),
  )
  return parts.map((some, part) => ({
    do: 'note-merge',
    copy,
    kept,
    taken: part === 0 ? plan.fits.length : 0,
    leftOut: some,
    renumbered: part === 0 ? [...plan.renumbered] : [],
    inHand: part === 0 ? inHand : undefined,
  }))
}
