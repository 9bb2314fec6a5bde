import type { Entry } from '../../journal/entry.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { Place } from '../../ledger/place.ts'

/** Some of a piece that are on the machine, by the entry that put them there. */
export interface AtHome {
  piece: PieceId
  count: number
  /** Where they came from; null for those that were found there and never came off. */
  from: Place | null
  entry: Entry
}

/** Follows what enters, comes off and goes back, and keeps by which entry each piece is on the machine. */
export class Homecomings {
  readonly #home = new Map<PieceId, AtHome[]>()

  /** In the order in which they came home. */
  all(): AtHome[] {
    return [...this.#home.values()].flat().sort((a, b) => a.entry.n - b.entry.n)
  }

  see(entry: Entry): void {
    if ('openings' in entry) {
      for (const { piece, count, at } of entry.openings) {
        if (at === 'machine') this.#add({ piece, count, from: null, entry })
      }
    }
    if (!('moves' in entry)) return
    for (const { piece, count, from, to } of entry.moves) {
      if (from === 'machine') this.#takeLast(piece, count)
      if (to === 'machine') this.#add({ piece, count, from, entry })
    }
  }

  #add(lot: AtHome): void {
    if (lot.count > 0) this.#home.set(lot.piece, [...(this.#home.get(lot.piece) ?? []), lot])
  }

  /** Of common pieces nobody can say which ones came off: those that were put on last. */
  #takeLast(piece: PieceId, count: number): void {
    const lots = this.#home.get(piece) ?? []
    let left = count
    while (left > 0) {
      const last = lots.pop()
      if (!last) break
      if (last.count > left) lots.push({ ...last, count: last.count - left })
      left -= last.count
    }
    this.#home.set(piece, lots)
  }
}
