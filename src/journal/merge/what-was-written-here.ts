import type { Entry } from '../entry.ts'
import type { Touched } from './touches.ts'

/** What the entries that only this side has touched, to be asked for each entry of the copy. */
export class WrittenHere {
  readonly #changed = new Map<string, Entry[]>()
  readonly #read = new Map<string, Entry[]>()
  readonly #stirred = new Map<string, Entry[]>()

  /** Notes one entry, in the order in which they were written. */
  note(entry: Entry, { changes, deals, reads, stirs }: Touched): void {
    for (const key of new Set([...changes, ...deals])) add(this.#changed, key, entry)
    for (const key of reads) add(this.#read, key, entry)
    for (const key of stirs) add(this.#stirred, key, entry)
  }

  /** Whether something new was said here about a thing. */
  hasChanged(key: string): boolean {
    return this.#changed.has(key)
  }

  /** The entries here that an entry of the copy does not fit with, in their order: the latest of them where there are many. */
  against({ changes, reads, sees }: Touched): Entry[] {
    const found = new Set<Entry>()
    const look = (keys: Iterable<string>, ...where: ReadonlyMap<string, Entry[]>[]) => {
      for (const key of keys)
        for (const each of where)
          for (const entry of each.get(key)?.slice(-MOST_AGAINST) ?? []) found.add(entry)
    }
    look(changes, this.#changed, this.#read)
    look(reads, this.#changed)
    look(sees, this.#changed, this.#stirred)
    return [...found].sort((a, b) => a.n - b.n).slice(-MOST_AGAINST)
  }
}

/** Nobody compares more with one entry, and a hundred entries about one bolt are not listed a hundred times each. */
const MOST_AGAINST = 20

function add(map: Map<string, Entry[]>, key: string, entry: Entry): void {
  const known = map.get(key)
  if (known) known.push(entry)
  else map.set(key, [entry])
}
