import type { Entry, EntryOf } from '../entry.ts'
import { fold, takenBack } from '../fold.ts'
import type { State } from '../state.ts'
import { interruption, isHarmless } from './interruption.ts'
import { firstUnlawful } from './lawful.ts'
import { LeftOut } from './left-out.ts'
import { Numbers } from './numbers.ts'
import { referencesOf } from './references.ts'
import { keyOf, SameThings } from './same-things.ts'
import type { NameOf, Side, Touched } from './touches.ts'
import { touchesOf, touchesOfUndo } from './touches-of.ts'
import type { TwoWays } from './two-ways.ts'
import { WrittenHere } from './what-was-written-here.ts'

/** An entry of the copy that does not fit with what is here. */
export interface Conflict {
  /** As it stands in the copy. */
  entry: Entry
  /** The entries here that it does not fit with, the latest of them; empty where a law or what it follows on decides. */
  against: readonly Entry[]
  why: 'same-thing' | 'label-taken' | 'law' | 'follows'
}

/** What becomes of the entries that are in the copy alone. */
interface Sorted {
  fits: Entry[]
  conflicts: Conflict[]
  renumbered: readonly { there: number; here: number }[]
}

type Undo = EntryOf<'undone' | 'redone'>

/** Two copies of a job that went their own ways, and what of the one can be written behind the other. */
export class Merge {
  readonly #ours: readonly Entry[]
  readonly #ways: TwoWays
  readonly #same: SameThings
  readonly #here: State
  readonly #there: State
  readonly #written = new WrittenHere()
  /** By the ids of the entries that the copy alone has and that count there. */
  readonly #touched = new Map<string, Touched>()
  /** Stops in the copy that say nothing and did nothing. */
  readonly #silent = new Set<string>()
  /** Entries of the copy that an earlier merge has left out. */
  readonly #leftOutBefore: ReadonlySet<string>
  readonly #backThere: ReadonlySet<number>
  readonly #aloneThere: ReadonlySet<number>
  /** What stands here, or was left out of it before. */
  readonly #known: ReadonlySet<string>
  /** Entries of the copy that a law forbids here. */
  readonly #unlawful = new Set<string>()

  constructor(ours: readonly Entry[], theirs: readonly Entry[], ways: TwoWays) {
    this.#ours = ours
    this.#ways = ways
    this.#same = new SameThings(ways)
    this.#aloneThere = new Set(ways.onlyThere.map(({ n }) => n))
    this.#backThere = takenBack(theirs)
    this.#leftOutBefore = new Set(
      ours.flatMap((entry) => (entry.type === 'merged' ? entry.leftOut.map((each) => each.entry) : [])),
    )
    this.#known = new Set([...ours.map(({ id }) => id), ...this.#leftOutBefore])
    this.#here = this.#readOurs()
    this.#there = this.#readTheirs(theirs)
  }

  /** Sorts what is in the copy alone, so that what fits can be written behind what is here and every law holds. */
  sort(): Sorted {
    const first = this.#ours.length + 1
    for (let read = 0; ; ) {
      const sorted = this.#sortOnce()
      const { fits } = sorted
      read += this.#ours.length + fits.length
      const n = firstUnlawful([...this.#ours, ...fits], first)
      if (n === null) return sorted
      const at = fits.findIndex((entry) => entry.n === n)
      // What breaks here breaks by what was taken back of what both had.
      const cause = at < 0 ? fits.findLast((entry) => isUndo(entry) && entry.entry < first) : fits[at]
      if (!cause) throw new Error(`entry ${n} of this record does not follow from those before it`)
      this.#unlawful.add(cause.id)
      // Each round reads the whole record: where that would take hundreds of them, the rest is left out at once.
      if (read > MOST_READ) for (const { id } of fits.slice(Math.max(0, at))) this.#unlawful.add(id)
    }
  }

  #readOurs(): State {
    const { onlyHere, both } = this.#ways
    const alone = new Set(onlyHere.map(({ n }) => n))
    const targetOf = undoTargets(this.#ours, both.here)
    return fold(this.#ours, {
      before: (state, entry) => {
        if (alone.has(entry.n)) this.#written.note(entry, touched(entry, state, keyOf, 'here', targetOf))
      },
    })
  }

  #readTheirs(theirs: readonly Entry[]): State {
    const nameOf: NameOf = (kind, no) => this.#same.nameOf(kind, no)
    const targetOf = undoTargets(theirs, this.#ways.both.there)
    return fold(theirs, {
      before: (state, entry) => {
        if (!this.#aloneThere.has(entry.n)) return
        const touches = touched(entry, state, nameOf, 'there', targetOf)
        this.#touched.set(entry.id, touches)
        if (entry.type === 'stopped') this.#noteStop(entry, state, touches)
      },
    })
  }

  #noteStop(entry: EntryOf<'stopped'>, there: State, { changes }: Touched): void {
    if (isWordless(entry) && isHarmless(interruption(there, entry.abrupt))) this.#silent.add(entry.id)
    // What is under way here would begin again, or come into doubt, by a stop that happened elsewhere.
    const { doubted, begunAgain, uncounted } = interruption(this.#here, entry.abrupt)
    for (const id of [...doubted, ...begunAgain])
      changes.add(`${keyOf('tightening', Number(id.slice(1)))} state`)
    for (const no of uncounted) changes.add(`${keyOf('step', no)} turns`)
  }

  #sortOnce(): Sorted {
    const numbers = this.#numbers()
    const fits: Entry[] = []
    const conflicts: Conflict[] = []
    const out = new LeftOut()
    for (const entry of this.#ways.onlyThere) {
      const n = this.#ours.length + fits.length + 1
      const sorted = this.#isKnown(entry) ? null : this.#judge(entry, n, numbers, out)
      if (sorted && 'n' in sorted) {
        fits.push(sorted)
        continue
      }
      if (sorted) conflicts.push(sorted)
      numbers.leaveOut(entry)
      out.add(entry, this.#silent.has(entry.id) ? undefined : this.#touched.get(entry.id))
    }
    return { fits, conflicts, renumbered: numbers.renumbered }
  }

  /** Whether it was left out before, or tells only that others left out what stands here: to and fro, that would never end. */
  #isKnown(entry: Entry): boolean {
    if (this.#leftOutBefore.has(entry.id)) return true
    if (entry.type !== 'merged' || entry.leftOut.length === 0) return false
    return entry.leftOut.every((each) => this.#known.has(each.entry))
  }

  /** The entry as it is to be written here, or why it is not; null for what says nothing. */
  #judge(entry: Entry, n: number, numbers: Numbers, out: LeftOut): Entry | Conflict | null {
    const conflict = (why: Conflict['why'], against: readonly Entry[] = []) => ({ entry, against, why })
    if (this.#unlawful.has(entry.id)) return conflict('law')
    if (entry.type === 'labels-dealt') {
      if (numbers.takeOverLabels(entry.from, entry.to)) return { ...entry, n }
      return conflict('label-taken', this.#numberedHere(entry))
    }
    if (isUndo(entry) && out.has(entry.entry)) return null
    if (this.#backThere.has(entry.n)) return isWordless(entry) ? null : numbers.takeOver(entry, n)
    if (this.#silent.has(entry.id)) return null
    // What others left out is owed here too, whatever stands here; listed itself, each list of it would be listed again.
    if (entry.type === 'merged')
      return numbers.takeOver(entry, n) ?? numbers.takeOver(owedAlone(entry), n) ?? conflict('follows')
    const touches = this.#touched.get(entry.id) ?? nothingTouched()
    const against = this.#written.against(touches)
    if (against.length > 0) return conflict('same-thing', against)
    if (out.isFollowedBy(touches)) return conflict('follows')
    return numbers.takeOver(entry, n) ?? conflict('follows')
  }

  #numbers(): Numbers {
    const known = new Set(this.#ways.both.here.map(({ n }) => n))
    return new Numbers(this.#same, this.#here.dealt, this.#there.dealt, (no) => {
      const blank = this.#here.blanks.get(no)
      return blank !== undefined && known.has(blank.run) && !this.#written.hasChanged(keyOf('container', no))
    })
  }

  /** The entries here that took numbers from a run of labels on. */
  #numberedHere({ from }: EntryOf<'labels-dealt'>): Entry[] {
    const isIn = (entry: Entry) =>
      entry.type === 'labels-dealt'
        ? entry.to >= from
        : referencesOf(entry).some(({ kind, no, isNew }) => kind === 'container' && isNew && no >= from)
    return this.#ways.onlyHere.filter(isIn)
  }
}

/** In entries, over all rounds: a second's work. */
const MOST_READ = 100_000

function touched(entry: Entry, state: State, nameOf: NameOf, side: Side, targetOf: TargetOf): Touched {
  if (!isUndo(entry)) return touchesOf(entry, state, nameOf, side)
  const { target, isAsBefore } = targetOf(entry)
  if (!target) return nothingTouched()
  if (isAsBefore) return { ...nothingTouched(), reads: new Set([`undo ${target.id}`]) }
  return touchesOfUndo(target, state, nameOf, side)
}

/** What was taken back or brought back on one way, where both had it, and whether it came to nothing in the end. */
type TargetOf = (undo: Undo) => { target: Entry | undefined; isAsBefore: boolean }

function undoTargets(all: readonly Entry[], both: readonly Entry[]): TargetOf {
  const byNumber = new Map(both.map((entry) => [entry.n, entry]))
  const before = takenBack(both)
  const after = takenBack(all)
  return ({ entry: n }) => ({ target: byNumber.get(n), isAsBefore: before.has(n) === after.has(n) })
}

/** The note of a merge with what it left out, and nothing that speaks of the record where it was made. */
function owedAlone({ inHand: _, ...entry }: EntryOf<'merged'>): EntryOf<'merged'> {
  return { ...entry, renumbered: [] }
}

function isUndo(entry: Entry): entry is Undo {
  return entry.type === 'undone' || entry.type === 'redone'
}

function isWordless(entry: Entry): boolean {
  return entry.type === 'stopped' && entry.note.trim() === ''
}

function nothingTouched(): Touched {
  return { changes: new Set(), reads: new Set(), sees: new Set(), stirs: new Set(), deals: new Set() }
}
