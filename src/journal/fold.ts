import type { AppliersOf } from './apply/appliers.ts'
import { buildingAppliers } from './apply/building.ts'
import { containerAppliers, dealLabels } from './apply/containers.ts'
import { countingAppliers } from './apply/counting.ts'
import { jobAppliers } from './apply/job.ts'
import { judgingAppliers } from './apply/judging.ts'
import { mergingAppliers } from './apply/merging.ts'
import { pictureAppliers } from './apply/pictures.ts'
import { pieceAppliers } from './apply/pieces.ts'
import { stepAppliers } from './apply/steps.ts'
import { strippingAppliers } from './apply/stripping.ts'
import { turningAppliers } from './apply/turning.ts'
import { waitingAppliers } from './apply/waiting.ts'
import { noteWork } from './apply/work.ts'
import { noteDealt } from './dealt.ts'
import type { Entry, EntryType } from './entry.ts'
import { refuseTooEarly } from './last-gates.ts'
import { emptyState, type State } from './state.ts'

/** An entry that cannot follow from those before it: the record is damaged, or a program wrote it wrongly. */
export class UnlawfulEntry extends Error {
  readonly n: number
  constructor({ n, type }: Entry, cause: unknown) {
    super(`entry ${n} (${type}): ${cause instanceof Error ? cause.message : cause}`, { cause })
    this.name = 'UnlawfulEntry'
    this.n = n
  }
}

/** Sees each entry that counts, with the state before it or after it, which it must not change. */
export interface FoldWatch {
  before?(state: State, entry: Entry): void
  after?(state: State, entry: Entry): void
}

/** The state that follows from a journal. Throws UnlawfulEntry when an entry breaks a law. */
export function fold(entries: readonly Entry[], watch: FoldWatch = {}): State {
  const state = emptyState()
  const back = takenBack(entries)
  for (const entry of entries) {
    const counts = !back.has(entry.n)
    if (counts) watch.before?.(state, entry)
    evolve(state, entry, !counts)
    if (counts) watch.after?.(state, entry)
  }
  return state
}

/** Which entries are taken back once all of these were written, by their numbers. */
export function takenBack(entries: readonly Entry[]): Set<number> {
  const back = new Set<number>()
  for (const entry of entries) {
    if (entry.type === 'undone') back.add(entry.entry)
    if (entry.type === 'redone') back.delete(entry.entry)
  }
  return back
}

/**
 * Carries a state on by the entries that came after it. Answers the state to go on with: the same one
 * changed in place, or a new one where something was undone, for then the fold starts over.
 */
export function foldOn(state: State, all: readonly Entry[], fresh: readonly Entry[]): State {
  if (fresh.some(({ type }) => type === 'undone' || type === 'redone')) return fold(all)
  for (const entry of fresh) evolve(state, entry, false)
  return state
}

function evolve(state: State, entry: Entry, takenBack: boolean): void {
  refuseOutOfOrder(entry)
  state.seq = entry.n
  state.clock = { at: entry.at, today: entry.at.slice(0, 10) }
  if (entry.type === 'labels-dealt') {
    // What was printed stays printed: no undo takes it back, and what was undone before it may still be redone.
    lawfully(entry, () => dealLabels(state, entry))
    return
  }
  lawfully(entry, () => noteDealt(state.dealt, entry))
  if (entry.type === 'undone') {
    state.undone.push(entry.entry)
    return
  }
  if (entry.type === 'redone') {
    state.undone = state.undone.filter((n) => n !== entry.entry)
    return
  }
  // New work ends the chance to redo what was undone before it, also when it is taken back itself.
  state.undone = []
  if (takenBack) return
  state.inForce.push(entry.n)
  if (!LEAVES_CLEARANCE.has(entry.type)) state.cleared = false
  if (!LEAVES_CARD.has(entry.type)) state.card = null
  const apply = appliers[entry.type] as (state: State, entry: Entry) => void
  lawfully(entry, () => {
    refuseTooEarly(state, entry)
    apply(state, entry)
    if (ENDS_WORK.has(entry.type)) goOnElsewhere(state)
    noteWork(state, entry)
  })
}

/** Of two steps that were taken up, the other one is in hand when the first is closed or taken back. */
function goOnElsewhere(state: State): void {
  if (state.build !== null || state.strip !== null) return
  for (const { no, built } of state.steps.values()) if (built === 'underway') state.build ??= no
}

const ENDS_WORK = new Set<EntryType>(['build-done', 'failed', 'reopened'])

/** A journal begins with its job and has no other, and what is taken back or brought back was written after that. */
function refuseOutOfOrder(entry: Entry): void {
  const { type, n } = entry
  if ((type === 'opened') !== (n === 1))
    throw new UnlawfulEntry(entry, 'a job is opened by its first entry, and by no other')
  if ((type === 'undone' || type === 'redone') && !(entry.entry > 1 && entry.entry < n))
    throw new UnlawfulEntry(entry, `entry ${entry.entry} is none that can be taken back here`)
}

function lawfully(entry: Entry, apply: () => void): void {
  try {
    apply()
  } catch (error) {
    throw new UnlawfulEntry(entry, error)
  }
}

/** Whether an entry ends a clearance that was given before it. */
export function withdrawsClearance(entry: Entry): boolean {
  if (entry.type === 'counted') return entry.lines.some(({ difference }) => difference !== undefined)
  if (entry.type === 'merged') return entry.leftOut.length > 0
  return !LEAVES_CLEARANCE.has(entry.type)
}

/** Entries that move no piece and change nothing that the clearance rests on. */
const LEAVES_CLEARANCE = new Set<EntryType>([
  'opened',
  'described',
  'archived',
  'noted',
  'renamed',
  'sized',
  'laid-out',
  'measured',
  'wrench-chosen',
  'condition-said',
  'order-lined',
  'order-changed',
  'part-noted',
  'trigger-set',
  'trigger-dropped',
  'bound',
  'seen-again',
  'container-opened',
  'container-put',
  'container-voided',
  'labels-voided',
  'pictures-added',
  'picture-sorted',
  // A count withdraws the clearance only where it does not agree.
  'counted',
  // So does a merge only where something is left out.
  'merged',
  'stopped',
  'cleared',
  'started',
  'closed',
])

const LEAVES_CARD = new Set<EntryType>([
  'described',
  'renamed',
  'sized',
  'laid-out',
  'archived',
  'labels-voided',
  'pictures-added',
  'picture-sorted',
  'order-lined',
  'order-changed',
  'part-noted',
  'merged',
])

const appliers: AppliersOf<Exclude<EntryType, 'labels-dealt' | 'undone' | 'redone'>> = {
  ...jobAppliers,
  ...stepAppliers,
  ...strippingAppliers,
  ...containerAppliers,
  ...pictureAppliers,
  ...pieceAppliers,
  ...countingAppliers,
  ...buildingAppliers,
  ...turningAppliers,
  ...judgingAppliers,
  ...waitingAppliers,
  ...mergingAppliers,
}
