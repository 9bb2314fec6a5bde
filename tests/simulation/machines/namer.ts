import type { Chance } from '../../support/damage/chance.ts'

const WHERE = ['front', 'rear', 'left', 'right', 'upper', 'lower', 'inner', 'outer', 'middle', 'side']
const WHAT = [
  'chain',
  'gear',
  'drive',
  'pump',
  'clutch',
  'crank',
  'intake',
  'exhaust',
  'shift',
  'starter',
  'fan',
  'coil',
]

const FASTENERS = ['bolts', 'screws', 'nuts', 'studs']
const MATCHED = [
  'caps',
  'rockers',
  'buckets',
  'shims',
  'lifters',
  'pushrods',
  'valves',
  'rollers',
  'plungers',
  'shells',
]
const COVERS = ['cover', 'housing', 'plate', 'casing', 'carrier']
const PARTS = ['lever', 'sprocket', 'pulley', 'guide', 'shaft', 'arm']
const CAPS = ['breather', 'filler cap', 'inspection plug', 'panel', 'dust cap']
const GASKETS = ['gasket', 'seal ring', 'O-ring', 'crush washer']
const AIDS = ['rag', 'cloth', 'locking pin', 'blanking plug', 'strap']
const TOOLS = ['magnet', 'mirror', 'feeler gauge', 'scraper', 'torch', 'puller', 'pick', 'dial gauge']
const FLUIDS = ['coolant', 'oil', 'gear oil', 'fork oil', 'brake fluid']

/** Gives each thing of a machine a name that no other thing of it has, as a mechanic would tell them apart. */
export class Namer {
  readonly #chance: Chance
  readonly #taken = new Set<string>()

  constructor(chance: Chance) {
    this.#chance = chance
  }

  cover(): string {
    return this.#name(COVERS)
  }

  fastener(): { many: string; one: string } {
    return plural(this.#name(FASTENERS))
  }

  matched(): { many: string; one: string } {
    return plural(this.#name(MATCHED))
  }

  gasket(): string {
    return this.#name(GASKETS)
  }

  part(): string {
    return this.#name(PARTS)
  }

  cap(): string {
    return this.#name(CAPS)
  }

  tool(): string {
    return this.#name(TOOLS)
  }

  aid(): { name: string; where: string } {
    return { name: this.#name(AIDS), where: this.#name(['port', 'bore', 'gallery', 'duct']) }
  }

  hose(): { name: string; ends: [string, string] } {
    return {
      name: this.#name(['hose', 'pipe']),
      ends: [this.#name(['inlet', 'tap']), this.#name(['outlet', 'stub'])],
    }
  }

  putOn(): { verb: 'lube' | 'locker' | 'sealant'; text: string } {
    const verb = this.#oneOf(['lube', 'locker', 'sealant'] as const)
    const stuff = { lube: 'oil', locker: 'medium locker', sealant: 'grey sealant' }[verb]
    return { verb, text: `${stuff} on the ${this.#name(['face', 'thread', 'seat', 'journal'])}` }
  }

  fluid(): string {
    const free = FLUIDS.filter((name) => !this.#taken.has(name))
    const name = free[0] ?? `fluid ${this.#taken.size}`
    this.#taken.add(name)
    return name
  }

  #name(nouns: readonly string[]): string {
    for (;;) {
      const name = `${this.#oneOf(WHERE)} ${this.#oneOf(WHAT)} ${this.#oneOf(nouns)}`
      if (this.#taken.has(name)) continue
      this.#taken.add(name)
      return name
    }
  }

  #oneOf<T>(list: readonly T[]): T {
    return list[this.#chance.whole(0, list.length - 1)] as T
  }
}

function plural(many: string): { many: string; one: string } {
  return { many, one: many.replace(/s$/, '') }
}
