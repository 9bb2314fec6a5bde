import type { Entry } from '../entry.ts'
import type { Touched } from './touches.ts'

/** The entries of a copy that are left out, and what they spoke of: what rests on that is left out as well. */
export class LeftOut {
  readonly #entries = new Set<number>()
  readonly #changed = new Set<string>()
  readonly #stirred = new Set<string>()

  /** Notes an entry with what it touched, where it counts. */
  add({ n }: Entry, touched: Touched | undefined): void {
    this.#entries.add(n)
    for (const key of touched?.changes ?? []) this.#changed.add(key)
    for (const key of touched?.deals ?? []) this.#changed.add(key)
    for (const key of touched?.stirs ?? []) this.#stirred.add(key)
  }

  /** Whether the entry of that number there was left out. */
  has(n: number): boolean {
    return this.#entries.has(n)
  }

  /** Whether an entry rests on one that was left out. */
  isFollowedBy({ changes, reads, sees }: Touched): boolean {
    const isChanged = (key: string) => this.#changed.has(key)
    return [...changes, ...reads, ...sees].some(isChanged) || [...sees].some((key) => this.#stirred.has(key))
  }
}
