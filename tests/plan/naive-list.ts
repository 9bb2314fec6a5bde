import type { Entry } from '../../src/journal/entry.ts'

/** One piece that can be held in a hand. */
interface Thing {
  lot: string
  place: string
  /** It went back to where it was bought. */
  isBack: boolean
}

/** The shopping list as somebody would make it who walks round with a pencil: every single thing, one after the other. */
export class NaiveList {
  readonly #things: Thing[] = []
  /** How many belong at the home of a lot; lots that were replaced have none. */
  readonly #home = new Map<string, number>()
  readonly #instead = new Map<string, string>()
  readonly #unfit = new Set<string>()
  readonly #used = new Set<string>()
  readonly #slips = new Map<string, { for: string | null; name: string; toCome: number; ordered: boolean }>()
  readonly #poured = new Map<string, { name: string; litres: number; isIn: boolean }>()
  readonly #tubes = new Map<string, { name: string; isOn: boolean }>()

  read(entry: Entry): void {
    if ('openings' in entry) {
      for (const piece of entry.pieces) {
        this.#home.set(piece.id, piece.should)
        if (piece.replaces !== undefined) this.#instead.set(piece.replaces, piece.id)
      }
      for (const { piece, count, at } of entry.openings) {
        for (let each = 0; each < count; each++) this.#things.push({ lot: piece, place: at, isBack: false })
      }
    }
    if ('moves' in entry) {
      for (const { piece, count, from, to } of entry.moves) {
        for (let each = 0; each < count; each++) this.#carry(piece, from, to, entry.type === 'order-returned')
      }
    }
    switch (entry.type) {
      case 'came-off':
        for (const { id, singleUse } of entry.pieces) if (singleUse) this.#used.add(id)
        return
      case 'judged':
        if (entry.count === undefined && entry.verdict === 'replace')
          for (const id of entry.of) this.#unfit.add(id)
        return
      case 'decided':
        if (entry.what === 'left-off')
          this.#home.set(entry.piece, (this.#home.get(entry.piece) ?? 0) - entry.count)
        if (entry.what === 'use-again') this.#used.delete(entry.piece)
        return
      case 'supplied':
        for (const id of entry.retired) this.#home.set(id, 0)
        if (entry.order) this.#slip(entry.order.id).toCome -= entry.order.count
        return
      case 'order-lined':
        for (const { id, piece = null, name, count, ordered } of entry.orders) {
          this.#slips.set(id, { for: piece, name, toCome: count, ordered })
        }
        return
      case 'order-changed': {
        if (entry.cancelled !== undefined) this.#slips.delete(entry.order)
        else if (entry.ordered) this.#slip(entry.order).ordered = true
        return
      }
      case 'order-returned':
        if (this.#slips.has(entry.order)) this.#slip(entry.order).toCome += entry.count
        return
      case 'drained':
        this.#poured.set(entry.fluid.id, { name: entry.fluid.name, litres: entry.fluid.litres, isIn: false })
        return
      case 'filled': {
        const known = this.#poured.get(entry.fluid)
        if (known) known.isIn = true
        return
      }
      case 'consumable-set':
        this.#tubes.set(entry.consumable.id, { name: entry.consumable.name, isOn: false })
        return
      case 'applied': {
        const known = this.#tubes.get(entry.consumable)
        if (known) known.isOn = true
        return
      }
      default:
    }
  }

  /** What to buy: `p3 2`, `coolant 2.1 L`, `grey sealant`, `o4 2`; in no order. */
  lines(): Set<string> {
    const list = new Set<string>()
    for (const [lot, belong] of this.#home) {
      const good = this.#things.filter((thing) => thing.lot === lot && this.#isGood(thing)).length
      const coming = [...this.#slips.values()].filter(
        (slip) => slip.for !== null && this.#now(slip.for) === lot,
      )
      const lacking = belong - good - coming.reduce((sum, { toCome }) => sum + Math.max(0, toCome), 0)
      if (belong > 0 && lacking > 0) list.add(`${lot} ${lacking}`)
    }
    for (const [id, { ordered, toCome }] of this.#slips)
      if (!ordered && toCome > 0) list.add(`${id} ${toCome}`)
    for (const name of new Set(
      [...this.#tubes.values()].filter(({ isOn }) => !isOn).map((tube) => tube.name),
    )) {
      if (![...this.#slips.values()].some((slip) => slip.for === null && slip.name === name)) list.add(name)
    }
    for (const name of new Set([...this.#poured.values()].map((fluid) => fluid.name))) {
      const empty = [...this.#poured.values()].filter((fluid) => fluid.name === name && !fluid.isIn)
      const lacking = empty.reduce((sum, { litres }) => sum + litres, 0)
      if (lacking > 0 && ![...this.#slips.values()].some((slip) => slip.name === name))
        list.add(`${name} ${lacking} L`)
    }
    return list
  }

  #carry(lot: string, from: string, to: string, isBack: boolean): void {
    const thing = this.#things.find((each) => each.lot === lot && each.place === from && !each.isBack)
    if (!thing) throw new Error(`none of ${lot} lies in ${from}`)
    thing.place = to
    thing.isBack = isBack
  }

  #isGood({ lot, place, isBack }: Thing): boolean {
    if (isBack || place === 'scrap' || place === 'lost' || this.#unfit.has(lot)) return false
    return !this.#used.has(lot) || place === 'machine'
  }

  #now(lot: string): string {
    const next = this.#instead.get(lot)
    return next === undefined ? lot : this.#now(next)
  }

  #slip(id: string) {
    const slip = this.#slips.get(id)
    if (!slip) throw new Error(`no slip ${id}`)
    return slip
  }
}
