import { type Chance, chanceOf } from '../../support/damage/chance.ts'
import type { ExtraStep, Lot, Machine, MatchedSet, Part, Passes, StripStep, Thing } from './machine.ts'
import { Namer } from './namer.ts'
import type { Shape } from './shapes.ts'

/** Makes up a machine of a shape: the same seed, the same machine. */
export function makeMachine(shape: Shape, seed: number): Machine {
  return new Maker(shape, seed).make()
}

class Maker {
  readonly #shape: Shape
  readonly #seed: number
  readonly #chance: Chance
  readonly #namer: Namer

  constructor(shape: Shape, seed: number) {
    this.#shape = shape
    this.#seed = seed
    this.#chance = chanceOf(seed)
    this.#namer = new Namer(this.#chance)
  }

  make(): Machine {
    const { steps: number, name } = this.#shape
    const steps = Array.from({ length: number }, (_, at) => this.#step(at))
    this.#spread(steps, this.#lots())
    this.#spread(
      steps,
      times(this.#shape.sets, () => this.#set()),
    )
    this.#spread(
      steps,
      times(this.#shape.gaskets, () => this.#gasket()),
    )
    this.#spread(
      steps,
      times(this.#shape.parts, () => this.#part()),
    )
    this.#spread(
      steps,
      times(this.#shape.hoses, () => this.#hose()),
    )
    this.#spread(
      steps,
      times(this.#shape.aids, () => this.#aid()),
    )
    this.#spread(
      steps,
      times(this.#shape.tools, () => ({ kind: 'aid', name: this.#namer.tool(), where: null })),
    )
    this.#spread(
      steps,
      times(this.#shape.marks, (at) => ({ kind: 'mark', text: `paint line ${at + 1} across the joint` })),
    )
    this.#spread(
      steps,
      times(this.#shape.putOns, () => this.#putOn()),
    )
    const fluids = times(this.#shape.fluids, () => this.#fluid())
    steps[0]?.things.push(...fluids)
    for (const at of this.#some(number, this.#shape.critical)) {
      const step = steps[at]
      if (step) step.critical = true
    }
    return { shape: name, seed: this.#seed, steps, extra: this.#extra(steps) }
  }

  /** The first one is off by itself, most of the others after the one before: some after one further down. */
  #step(at: number): StripStep {
    const cover = this.#namer.cover()
    const after =
      at === 0 || this.#chance.whole(1, 6) === 1
        ? []
        : [at - (this.#chance.whole(1, 4) === 1 && at > 1 ? 2 : 1)]
    const part: Part = {
      kind: 'part',
      name: cover,
      isSingleUse: false,
      isPlain: false,
      isCap: true,
      check: null,
    }
    return {
      title: `${cover} off`,
      after,
      hides: after.length > 0 && this.#chance.whole(1, 3) > 1,
      critical: false,
      things: [part],
    }
  }

  #lots(): Lot[] {
    const lots: Lot[] = []
    let left = this.#shape.fasteners
    for (let mixed = 0; mixed < this.#shape.mixed && left > 12; mixed += 1) {
      const pair = this.#mixed()
      lots.push(...pair)
      left -= pair.reduce((sum, { count }) => sum + count, 0)
    }
    while (left > 0) {
      const count = Math.min(left, this.#chance.whole(2, 12))
      lots.push(this.#lot(count))
      left -= count
    }
    return lots
  }

  #lot(count: number): Lot {
    const { many, one } = this.#namer.fastener()
    const isSingleUse = this.#chance.whole(1, 12) === 1
    return {
      kind: 'lot',
      name: many,
      one,
      count,
      ...this.#size(),
      at: null,
      isSingleUse,
      passes: this.#passes(count),
    }
  }

  /** Two lengths of one name: each place takes its own. */
  #mixed(): [Lot, Lot] {
    const { many, one } = this.#namer.fastener()
    const long = this.#chance.whole(1, 2)
    const places = times(this.#chance.whole(4, 8), (at) => String(at + 1))
    const at = this.#some(places.length, long)
    const lot = (size: string, places: string[]): Lot => ({
      kind: 'lot',
      name: many,
      one,
      count: places.length,
      size,
      drive: 'hex 8',
      at: places,
      isSingleUse: false,
      passes: null,
    })
    return [
      lot(
        'M6x25',
        places.filter((_, place) => !at.has(place)),
      ),
      lot(
        'M6x40',
        places.filter((_, place) => at.has(place)),
      ),
    ]
  }

  #size(): { size: string; drive: string } {
    const [size = '', drive = ''] = this.#oneOf([
      ['M5x16', 'hex 8'],
      ['M6x20', 'hex 10'],
      ['M6x30', 'hex 10'],
      ['M8x35', 'hex 13'],
      ['M8x60', 'hex 13'],
      ['M10x45', 'hex 17'],
      ['M10x90', 'hex 17'],
    ])
    return { size, drive }
  }

  #passes(count: number): Passes | null {
    if (this.#chance.whole(1, 10) > this.#shape.tightened) return null
    const layout = count % 2 === 0 && count >= 4 ? `2x${count / 2}` : null
    return this.#oneOf<Passes>([
      { text: '10 Nm, dry', kinds: ['torque'], layout: null },
      { text: '10 Nm, dry', kinds: ['torque'], layout },
      { text: '10 Nm, 20 Nm, dry', kinds: ['torque', 'torque'], layout },
      { text: '12 Nm, mark, dry', kinds: ['torque', 'mark'], layout },
      { text: '10 Nm, 20 Nm, 90 deg, oiled', kinds: ['torque', 'torque', 'angle'], layout },
    ])
  }

  #set(): MatchedSet {
    const { many, one } = this.#namer.matched()
    const bank = this.#oneOf(['A', 'B', 'C', 'E'])
    const positions = times(this.#chance.whole(2, 8), (at) => `${bank}${at + 1}`)
    const check = this.#chance.whole(1, 3) === 1 ? 'look for score' : null
    const marked = positions.filter(() => this.#chance.whole(1, 4) === 1)
    return { kind: 'set', name: many, one, positions, check, marked }
  }

  #gasket(): Part {
    const name = this.#namer.gasket()
    return { kind: 'part', name, isSingleUse: true, isPlain: /washer$/.test(name), isCap: false, check: null }
  }

  #part(): Part {
    const check = this.#chance.whole(1, 3) === 1 ? 'look for cracks' : null
    const isCap = this.#chance.whole(1, 3) === 1
    return {
      kind: 'part',
      name: isCap ? this.#namer.cap() : this.#namer.part(),
      isSingleUse: false,
      isPlain: false,
      isCap,
      check,
    }
  }

  #hose(): Thing {
    const { name, ends } = this.#namer.hose()
    return { kind: 'hose', name, ends }
  }

  #aid(): Thing {
    return { kind: 'aid', ...this.#namer.aid() }
  }

  #fluid(): Thing {
    return { kind: 'fluid', name: this.#namer.fluid(), litres: `${this.#chance.whole(5, 60) / 10} L` }
  }

  #putOn(): Thing {
    return { kind: 'put-on', ...this.#namer.putOn() }
  }

  #extra(steps: readonly StripStep[]): ExtraStep[] {
    const kinds = ['clean', 'inspect', 'measure', 'prime'] as const
    return [...this.#some(steps.length, Math.ceil(steps.length / 4))]
      .sort((a, b) => b - a)
      .map((before, at) => ({
        kind: this.#oneOf(kinds),
        title: `what lies beneath, look ${at + 1}`,
        after: before < steps.length - 1 && steps[before + 1]?.after.includes(before) ? before + 1 : null,
        before,
      }))
  }

  /** Onto steps at random; what is put on and what is marked must have something to sit on, which each step has. */
  #spread(steps: readonly StripStep[], things: readonly Thing[]): void {
    // Two lengths of one name are one lot to the hand: they come off together.
    const homes = new Map<string, StripStep>()
    for (const thing of things) {
      const known = thing.kind === 'lot' && thing.at ? homes.get(thing.name) : undefined
      const step = known ?? this.#oneOf(steps)
      if (thing.kind === 'lot') homes.set(thing.name, step)
      step.things.push(thing)
    }
  }

  #oneOf<T>(list: readonly T[]): T {
    return list[this.#chance.whole(0, list.length - 1)] as T
  }

  /** So many of the first `length` numbers. */
  #some(length: number, number: number): Set<number> {
    const all = times(length, (at) => at)
    const chosen = new Set<number>()
    while (chosen.size < Math.min(number, length)) chosen.add(this.#oneOf(all))
    return chosen
  }
}

function times<T>(count: number, make: (at: number) => T): T[] {
  return Array.from({ length: count }, (_, at) => make(at))
}
