import { type Kind, referencesOf } from './references.ts'
import type { TwoWays } from './two-ways.ts'

/** Which things of a copy are things here, under which number: known by the entries that both have. */
export class SameThings {
  /** By the key there. What is not in it and was not dealt in the copy alone has the same number on both ways. */
  readonly #here = new Map<string, number>()
  readonly #onlyThere = new Set<string>()

  constructor({ moved, onlyThere, both }: Pick<TwoWays, 'moved' | 'onlyThere' | 'both'>) {
    for (const { here, there } of moved) {
      this.#here.set(keyOf('entry', there.n), here.n)
      const ours = referencesOf(here).filter(({ isNew }) => isNew)
      const theirs = referencesOf(there).filter(({ isNew }) => isNew)
      for (const [index, { kind, no }] of theirs.entries())
        this.#here.set(keyOf(kind, no), ours[index]?.no ?? no)
    }
    // Passes that are set anew are those of the same tightening, where it was not begun.
    const tightenings = new Set(
      both.there.flatMap((entry) => (entry.type === 'tightening-set' ? entry.tightening.id : [])),
    )
    for (const entry of onlyThere) {
      this.#onlyThere.add(keyOf('entry', entry.n))
      if (entry.type === 'labels-dealt')
        for (let no = entry.from; no <= entry.to; no += 1) this.#onlyThere.add(keyOf('container', no))
      if (entry.type === 'tightening-set' && tightenings.has(entry.tightening.id)) continue
      for (const { kind, no, isNew } of referencesOf(entry)) if (isNew) this.#onlyThere.add(keyOf(kind, no))
    }
  }

  /** The number here of a thing of the copy; null where the copy alone knows it. */
  numberOf(kind: Kind, no: number): number | null {
    const key = keyOf(kind, no)
    return this.#here.get(key) ?? (this.#onlyThere.has(key) ? null : no)
  }

  /** A name for a thing of the copy: the one that it has here, or one that nothing here has. */
  nameOf(kind: Kind, no: number): string {
    const here = this.numberOf(kind, no)
    return here === null ? `${kind} ${no} of the copy` : keyOf(kind, here)
  }
}

/** A thing by its number here, as a key. */
export function keyOf(kind: Kind, no: number): string {
  return `${kind} ${no}`
}
