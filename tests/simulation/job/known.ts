import type { Entry } from '../../../src/journal/entry.ts'
import type { Lot, Thing } from '../machines/machine.ts'
import type { Act } from './act.ts'

/** What the mechanic wrote on bags and on paper: the numbers that the record gave to things. */
export class Known {
  /** The bag, tray or tag that a thing lies in. */
  readonly containers = new Map<Thing, number>()
  /** Ids of pieces, by thing and position. */
  readonly pieces = new Map<Thing, Map<string, string>>()
  readonly marks = new Map<Thing, Map<string, string>>()
  readonly tightenings = new Map<Thing, { id: string; order: readonly string[] }>()
  readonly consumables = new Map<Thing, string>()
  readonly fluids = new Map<Thing, string>()
  readonly checks = new Map<Thing, string[]>()
  /** Numbers of counts that did not agree. */
  readonly differences = new Map<Thing, string[]>()
  /** How many of a lot are said to come off, where that is wrong. */
  readonly saidOff = new Map<Lot, number>()
  /** How many of a lot go back under its name, where that is not all of it. */
  readonly toFit = new Map<Lot, number>()
  /** The step that was begun, or added, last. */
  newest = 0
  /** The number under which the round before the first start is proposed; 0 where it is not. */
  roundProposed = 0
  /** What turned out to be one more of a lot. */
  readonly oneMore = new Map<Thing, Lot>()
  readonly #all = new Map<Thing, string[]>()
  readonly #old = new Map<Thing, string>()

  learn({ thing, at }: Act, entries: readonly Entry[]): void {
    for (const entry of entries) {
      if (entry.type === 'strip-began' || entry.type === 'step-added') this.newest = entry.step.no
      if (!thing) continue
      if (entry.type === 'container-opened') this.containers.set(thing, entry.container.no)
      if (entry.type === 'came-off' || entry.type === 'supplied') {
        if ('opened' in entry && entry.opened) this.containers.set(thing, entry.opened.no)
        for (const piece of entry.pieces) {
          if (piece.replaces) this.#old.set(thing, piece.replaces)
          const whole = this.oneMore.get(thing) ?? thing
          this.#all.set(whole, [...(this.#all.get(whole) ?? []), piece.id])
          this.#put(this.pieces, thing, piece.home.position ?? '', piece.id)
        }
      }
      if (entry.type === 'counted')
        this.differences.set(
          thing,
          entry.lines.flatMap(({ difference }) => difference ?? []),
        )
      if (entry.type === 'put-in')
        for (const piece of entry.pieces) {
          this.#all.set(thing, [...(this.#all.get(thing) ?? []), piece.id])
          this.#put(this.pieces, thing, '', piece.id)
        }
      if (entry.type === 'marked') this.#put(this.marks, thing, at ?? '', entry.mark.id)
      if (entry.type === 'tightening-set') this.tightenings.set(thing, entry.tightening)
      if (entry.type === 'consumable-set') this.consumables.set(thing, entry.consumable.id)
      if (entry.type === 'drained') this.fluids.set(thing, entry.fluid.id)
      if (entry.type === 'checks-set')
        this.checks.set(
          thing,
          entry.checks.map(({ id }) => id),
        )
    }
  }

  /** What is proposed for the way back, as it was answered. */
  hear(proposed: unknown): void {
    if (!Array.isArray(proposed)) return
    this.roundProposed = proposed.findIndex((each) => each?.key === 'round') + 1
  }

  /** The id of a piece, `p12`. Throws where the record never told it. */
  piece(thing: Thing, at = ''): string {
    const known = this.pieces.get(thing)
    // Of several lengths, one that has a place of its own is known by it.
    const only = known?.size === 1 ? [...known.values()][0] : undefined
    return known?.get(at) ?? only ?? nothing(thing, at)
  }

  /** Every id that the record ever gave to a thing: of old ones and of new ones. */
  everyPiece(thing: Thing): readonly string[] {
    return this.#all.get(thing) ?? []
  }

  /** The id of the piece in whose place a new one came. */
  old(thing: Thing): string {
    return this.#old.get(thing) ?? nothing(thing, 'old')
  }

  mark(thing: Thing, at = ''): string {
    return this.marks.get(thing)?.get(at) ?? nothing(thing, at)
  }

  #put(map: Map<Thing, Map<string, string>>, thing: Thing, at: string, id: string): void {
    const known = map.get(thing) ?? new Map<string, string>()
    map.set(thing, known.set(at, id))
  }
}

function nothing(thing: Thing, at: string): never {
  throw new Error(`the record told nothing of ${JSON.stringify(thing)} at '${at}'`)
}
