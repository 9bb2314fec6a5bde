import { LAST_CONTAINER } from '../../label/code.ts'
import type { Dealt } from '../dealt.ts'
import type { Entry } from '../entry.ts'
import { type Kind, type Reference, referencesOf, rewritten } from './references.ts'
import { keyOf, type SameThings } from './same-things.ts'

type Thing = Exclude<Kind, 'entry'>

/** The highest number that a kind of thing may have; others have none. */
const LAST: Partial<Record<Thing, number>> = { container: LAST_CONTAINER, step: 9999 }

/**
 * The numbers here for what is taken over from a copy. What is new keeps its number where that was never dealt here; else
 * it gets one above all that were dealt on either way, so that no other bag has to be written on anew for it.
 */
export class Numbers {
  /** Containers that have another number here. */
  readonly renumbered: { there: number; here: number }[] = []
  readonly #same: SameThings
  /** By the key in the copy: what was taken over. */
  readonly #taken = new Map<string, number>()
  /** What was dealt in the copy by entries that are left out. */
  readonly #gone = new Set<string>()
  readonly #given = new Set<string>()
  readonly #ours: Dealt
  readonly #highest: Dealt
  readonly #isFreeLabel: (no: number) => boolean

  /**
   * @param ours the highest numbers dealt here
   * @param theirs the highest numbers dealt in the copy
   * @param isFreeLabel whether a number is on a label that both ways know and that is still unused here
   */
  constructor(same: SameThings, ours: Dealt, theirs: Dealt, isFreeLabel: (no: number) => boolean) {
    this.#same = same
    this.#ours = ours
    this.#isFreeLabel = isFreeLabel
    this.#highest = { ...ours }
    for (const kind of Object.keys(ours) as Thing[]) this.#highest[kind] = Math.max(ours[kind], theirs[kind])
  }

  /** The entry as it is to be written here with the number `n`; null where it speaks of what is not here, or no number is left. */
  takeOver(entry: Entry, n: number): Entry | null {
    const references = referencesOf(entry)
    const dealt = references.filter(({ kind, no, isNew }) => isNew && this.#same.numberOf(kind, no) === null)
    const isDealt = ({ kind, no }: Reference) => dealt.some((each) => each.kind === kind && each.no === no)
    const unknown = references.filter((each) => !isDealt(each) && this.#numberOf(each.kind, each.no) === null)
    if (unknown.some(({ kind, no }) => kind !== 'step' || this.#gone.has(keyOf(kind, no)))) return null
    if (dealt.some(({ kind }) => this.#isUsedUp(kind as Thing))) return null
    // What came in a kit before anything was off may name a step that is yet to begin.
    for (const { kind, no } of [...unknown, ...dealt]) this.#deal(kind as Thing, no)
    this.#taken.set(keyOf('entry', entry.n), n)
    return { ...rewritten(entry, ({ kind, no }) => this.#numberOf(kind, no) ?? no), n }
  }

  /** Leaves an entry out: what it dealt is nothing here. */
  leaveOut(entry: Entry): void {
    for (const { kind, no, isNew } of referencesOf(entry)) if (isNew) this.#gone.add(keyOf(kind, no))
  }

  /** Takes over a run of printed labels, whose numbers stay; false where one of them is used here. */
  takeOverLabels(from: number, to: number): boolean {
    if (from <= this.#ours.container || this.renumbered.some(({ here }) => here >= from)) return false
    for (let no = from; no <= to; no += 1) this.#give('container', no, no)
    return true
  }

  #numberOf(kind: Kind, no: number): number | null {
    return this.#taken.get(keyOf(kind, no)) ?? this.#same.numberOf(kind, no)
  }

  #deal(kind: Thing, no: number): void {
    // It is there for a container that was opened, taken back and opened again, or whose label was taken over.
    if (this.#taken.has(keyOf(kind, no))) return
    const here = this.#isFree(kind, no) ? no : this.#highest[kind] + 1
    this.#give(kind, no, here)
    if (kind === 'container' && here !== no) this.renumbered.push({ there: no, here })
  }

  /** One entry opens one container and begins one step at most. */
  #isUsedUp(kind: Thing): boolean {
    return this.#highest[kind] >= (LAST[kind] ?? Number.POSITIVE_INFINITY)
  }

  #isFree(kind: Thing, no: number): boolean {
    if (this.#given.has(keyOf(kind, no))) return false
    return no > this.#ours[kind] || (kind === 'container' && this.#isFreeLabel(no))
  }

  #give(kind: Thing, there: number, here: number): void {
    this.#taken.set(keyOf(kind, there), here)
    this.#given.add(keyOf(kind, here))
    this.#highest[kind] = Math.max(this.#highest[kind], here)
  }
}
