import type { Lot } from '../machines/machine.ts'

type Kind = 'torque' | 'angle' | 'mark'

/** A bolt that is next: `doubt` where somebody has to say first whether it was turned. */
export interface NextBolt {
  pass: number
  bolt: string
  doubt: boolean
}

/**
 * Which bolts of one joint are through which pass, as somebody would keep it on paper beside the machine, by the rule
 * of the trade (common practice): a torque pass that was broken off begins again, a pass by angle goes on behind the bolt
 * that may have been turned, and a stripe stays where it is. It knows nothing of the program's own book.
 */
export class Grid {
  readonly lot: Lot
  readonly order: readonly string[]
  readonly #kinds: readonly Kind[]
  readonly #through: Set<string>[]
  #doubt: NextBolt | null = null

  constructor(lot: Lot, order: readonly string[]) {
    this.lot = lot
    this.order = order
    this.#kinds = lot.passes?.kinds ?? []
    this.#through = this.#kinds.map(() => new Set<string>())
  }

  kindOf(pass: number): Kind | undefined {
    return this.#kinds[pass]
  }

  next(): NextBolt | null {
    if (this.#doubt) return this.#doubt
    for (const [pass, through] of this.#through.entries()) {
      const bolt = this.order.find((name) => !through.has(name))
      if (bolt !== undefined) return { pass, bolt, doubt: false }
    }
    return null
  }

  /** How many are through the pass that is at hand. */
  get throughNow(): number {
    return this.#through[this.next()?.pass ?? 0]?.size ?? 0
  }

  /** Whether anything of it is done, and something is not. */
  get isHalfWay(): boolean {
    return this.next() !== null && (this.#through[0]?.size ?? 0) > 0
  }

  isThrough(pass: number, at: number): boolean {
    return this.#through[pass]?.has(this.order[at] ?? '') ?? false
  }

  turned(pass: number, bolt: string): void {
    this.#through[pass]?.add(bolt)
  }

  /** Somebody looked at the bolt in doubt. */
  settle(wasTurned: boolean): void {
    if (this.#doubt && wasTurned) this.turned(this.#doubt.pass, this.#doubt.bolt)
    this.#doubt = null
  }

  /** Work stopped; `abrupt`: nobody was there to say how far it was. */
  stop(abrupt: boolean): void {
    const next = this.next()
    if (!next || next.doubt) return
    const through = this.#through[next.pass]
    if (this.#kinds[next.pass] === 'torque') through?.clear()
    if (this.#kinds[next.pass] === 'angle' && (abrupt || through?.size))
      this.#doubt = { ...next, doubt: true }
  }
}
