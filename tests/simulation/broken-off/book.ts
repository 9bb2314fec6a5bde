import type { Entry } from '../../../src/journal/entry.ts'
import type { Act } from '../job/act.ts'
import { extraNo } from '../job/build-acts.ts'
import { Known } from '../job/known.ts'
import type { Lot, Machine, Thing } from '../machines/machine.ts'
import { type Deed, easedBolt } from './deeds.ts'
import { Grid, type NextBolt } from './grid.ts'
import type { Named } from './named.ts'

/**
 * The second book of a job, kept on paper from the acts alone: what was done and said to be recorded, and what that
 * leaves to do. It knows the machine and the order in which hands must work, and nothing of how the program works it out.
 */
export class Book {
  readonly known = new Known()
  readonly #machine: Machine
  readonly #deeds: readonly Deed[]
  readonly #done = new Set<number>()
  /** Steps of the way back that were taken up. */
  readonly #taken = new Set<number>()
  readonly #grids = new Map<Thing, Grid>()
  readonly #easings = new Map<Thing, { id: string; order: readonly string[]; eased: number }>()
  /** Of a lot, how many are on already where not all are. */
  readonly #fitted = new Map<Thing, number>()
  #hasWorked = true
  #from = 0

  constructor(machine: Machine, deeds: readonly Deed[]) {
    this.#machine = machine
    this.#deeds = deeds
  }

  /** The first deed that is not done, of the step that is open before any other; null at the end. */
  next(): number | null {
    for (const step of this.#taken) {
      if (!this.#isOpen(step)) continue
      const at = this.#deeds.findIndex(
        (deed, place) =>
          deed.phase === 'build' && deed.act.step === step && !isTool(deed) && !this.isDone(place),
      )
      if (at >= 0) return at
    }
    while (this.#from < this.#deeds.length && this.isDone(this.#from)) this.#from += 1
    return this.#from < this.#deeds.length ? this.#from : null
  }

  isDone(at: number): boolean {
    const { act, eases, phase } = this.#deeds[at] as Deed
    const { doing, thing, pass, at: bolt } = act
    if (eases !== undefined) return (this.#easings.get(thing as Thing)?.eased ?? 0) > eases
    if (doing === 'turn' && phase === 'build')
      return this.#grids.get(thing as Thing)?.isThrough(pass ?? 0, Number(bolt)) ?? false
    return this.#done.has(at)
  }

  /** A deed was done, and its entries are recorded. */
  did(at: number, entries: readonly Entry[]): void {
    const { act, eases } = this.#deeds[at] as Deed
    const { doing, thing, step } = act
    if (entries.length > 0) this.#hasWorked = true
    this.known.learn(act, entries)
    for (const entry of entries) {
      if (entry.type === 'loosening-set' && thing)
        this.#easings.set(thing, { id: entry.loosening.id, order: entry.loosening.order, eased: 0 })
      if (entry.type === 'tightening-set' && thing?.kind === 'lot')
        this.#grids.set(thing, new Grid(thing, entry.tightening.order))
    }
    if (eases !== undefined && thing) {
      const easing = this.#easings.get(thing)
      if (easing) easing.eased = Math.max(easing.eased, eases + 1)
      return
    }
    if (doing === 'turn' && thing?.kind === 'lot') {
      const grid = this.#grids.get(thing)
      grid?.turned(act.pass ?? 0, grid.order[Number(act.at)] ?? '')
      return
    }
    if (doing === 'take') this.#taken.add(step)
    this.#done.add(at)
    if (doing === 'take out') this.#lookAgain()
  }

  /** Hands were in the machine: what was looked at before is looked at again, unless it is closed. */
  #lookAgain(): void {
    for (const [at, { act }] of this.#deeds.entries())
      if (act.doing === 'look' && !this.#isClosed(act.step)) this.#done.delete(at)
    this.#from = 0
  }

  /** Some of a lot are on, and the rest is not. */
  fitted(lot: Lot, count: number): void {
    this.#hasWorked = true
    this.#fitted.set(lot, count)
  }

  /** Whether some of a lot are on the machine again. */
  isAnyOn(lot: Lot): boolean {
    return (
      this.#fitted.has(lot) ||
      this.#deeds.some(({ act }, at) => act.doing === 'fit' && act.thing === lot && this.isDone(at))
    )
  }

  /** What is said of a deed: of a lot that is on in part, the rest of it. */
  line(at: number): string {
    const { act } = this.#deeds[at] as Deed
    const { thing, doing } = act
    const on = thing && doing === 'fit' ? this.#fitted.get(thing) : undefined
    return on === undefined || thing?.kind !== 'lot'
      ? act.say(this.known)
      : `fit ${thing.count - on} ${thing.name}`
  }

  /** What was named was done and recorded. */
  didNamed(named: Named): void {
    this.#hasWorked = true
    switch (named.does) {
      case 'take':
        this.#taken.add(named.step)
        break
      case 'turn': {
        const grid = this.#gridOf(named.of)
        const next = grid?.next()
        if (grid && next) grid.turned(next.pass, next.bolt)
        break
      }
      case 'strip': {
        const easing = [...this.#easings.values()].find(({ id }) => id === named.of)
        if (easing) easing.eased += 1
        break
      }
      default:
    }
    for (const at of this.#deedsOf(named)) this.#done.add(at)
    if (named.does === 'take-out') this.#lookAgain()
    this.#from = 0
  }

  /** Work stopped and the record says so; `abrupt`: nobody was there to say how far it was. */
  stop(abrupt: boolean): void {
    // What was said when nobody had done anything since changes nothing.
    if (abrupt && !this.#hasWorked) return
    this.#hasWorked = false
    for (const grid of this.#grids.values()) if (this.#isOpen(this.#stepOf(grid.lot))) grid.stop(abrupt)
    this.#from = 0
  }

  /** The bolt that is in doubt. */
  doubt(): { grid: Grid; id: string; next: NextBolt } | null {
    for (const [thing, grid] of this.#grids) {
      const next = grid.next()
      if (next?.doubt) return { grid, id: this.known.tightenings.get(thing)?.id ?? '', next }
    }
    return null
  }

  settled(wasTurned: boolean): void {
    this.#hasWorked = true
    this.doubt()?.grid.settle(wasTurned)
    this.#from = 0
  }

  /** The joint of which bolts are turned now, if any: what is half way, else the first in the step that is open. */
  turning(): { grid: Grid; next: NextBolt } | null {
    for (const grid of this.#grids.values()) {
      const next = grid.next()
      if (next && grid.isHalfWay && this.#isOpen(this.#stepOf(grid.lot))) return { grid, next }
    }
    return null
  }

  /** Whether what is named as next is right; else why it is not. */
  wrongWith(named: Named): string | null {
    const doubt = this.doubt()
    const turning = this.turning()
    if (doubt && !(named.does === 'turn' && named.doubt))
      return `${doubt.next.bolt} of ${doubt.id} is in doubt, and is not asked about`
    if (turning && named.does !== 'turn')
      return `${turning.next.bolt} of ${turning.grid.lot.name} is next, and ${named.does} is named`
    switch (named.does) {
      case 'strip':
        return this.#wrongStrip(named)
      case 'take':
      case 'look':
      case 'blocked':
        return this.#wrongStart(named.does, named.step)
      case 'close': {
        const left = this.#left(named.step)
        return left.length === 0 ? null : `${left[0]?.act.doing} is left in step ${named.step}`
      }
      case 'turn':
        return this.#wrongTurn(named)
      case 'clear':
        return this.#deeds.every((deed, at) => deed.act.doing === 'clear' || this.isDone(at) || isScan(deed))
          ? null
          : 'something is left'
      case 'leftovers':
        return this.#tools().length > 0 ? null : 'nothing is left over'
      case 'begin':
        return this.#done.size === 0 ? null : 'the job is begun'
      case 'other':
        // Cleared on the disk before anybody could say so: then there is nothing more to do.
        return named.what === 'start' && this.#deeds.every((deed, at) => this.isDone(at) || isScan(deed))
          ? null
          : `${named.what} is named`
      default:
        return this.#wrongTodo(named)
    }
  }

  /** The name of what is meant, for whoever looks for it. */
  called(named: Named): string[] {
    const [at] = this.#deedsOf(named)
    const { thing } = (at === undefined ? undefined : this.#deeds[at]?.act) ?? {}
    if (named.does === 'turn') return [named.bolt]
    if (named.does === 'strip') return named.bolt === undefined ? [`step ${named.step}`] : [named.bolt]
    if ('step' in named) return [`step ${named.step}`]
    if (thing === undefined) return []
    const bag = named.does === 'fit' ? this.known.containers.get(thing) : undefined
    const words = 'one' in thing ? [thing.one] : 'name' in thing ? [thing.name] : []
    const position = named.does === 'fit' && named.position !== undefined ? [named.position] : []
    return [...words, ...position, ...(bag === undefined ? [] : [` ${bag}`])]
  }

  #wrongStrip({ step, bolt, of }: Extract<Named, { does: 'strip' }>): string | null {
    const at = this.next()
    const deed = at === null ? undefined : this.#deeds[at]
    if (deed?.phase !== 'strip') return 'nothing comes off any more'
    if (of === undefined || step !== 0) {
      if (deed.act.step !== step) return `step ${deed.act.step} comes off, not step ${step}`
    }
    if (deed.eases === undefined) return bolt === undefined ? null : `${bolt} is eased already`
    const easing = this.#easings.get(deed.act.thing as Thing)
    const right = easedBolt(easing?.order ?? [], deed.eases)
    return bolt === right && of === easing?.id ? null : `${right} is eased next, not ${bolt}`
  }

  #wrongStart(does: 'take' | 'look' | 'blocked', step: number): string | null {
    const open = [...this.#taken].find((each) => this.#isOpen(each))
    if (open !== undefined) return `step ${open} is open, and ${does} ${step} is named`
    if (this.#isClosed(step)) return `step ${step} is done`
    const isStartable = this.#isStartable(step)
    if (does === 'blocked') return isStartable ? `step ${step} could start` : null
    if (!isStartable) return `step ${step} cannot start yet`
    const aid = this.#aidIn([step, ...this.#beneath(step)])
    if (aid && this.#isHiding(step)) return `${aid} is still in, and ${does} ${step} is named`
    const isLookDue = this.#deeds.some((deed, at) => isOf(deed, 'look', step) && !this.isDone(at))
    if (does === 'look') return isLookDue ? null : `step ${step} was looked at`
    return isLookDue ? `step ${step} must be looked at first` : null
  }

  #wrongTurn({ of, bolt, pass, doubt }: Extract<Named, { does: 'turn' }>): string | null {
    const grid = this.#gridOf(of)
    if (!grid) return `there is no ${of}`
    const half = this.turning()
    if (half && half.grid !== grid) return `${half.grid.lot.name} is half way, and ${of} is named`
    const step = this.#stepOf(grid.lot)
    if (!this.#isOpen(step)) return `step ${step} of ${of} is not open`
    const left = this.#left(step).filter(({ act }) => act.doing === 'fit' && act.thing === grid.lot)
    if (left.length > 0) return `${grid.lot.name} are not all on`
    const next = grid.next()
    if (!next) return `all of ${of} are through`
    const isSame = next.bolt === bolt && next.doubt === doubt && (pass ?? next.pass) === next.pass
    return isSame
      ? null
      : `${next.bolt} in pass ${next.pass + 1}${next.doubt ? ' in doubt' : ''} is next, not ${bolt} in pass ${(pass ?? -1) + 1}`
  }

  #wrongTodo(
    named: Extract<Named, { does: 'fit' | 'take-out' | 'apply' | 'confirm' | 'fill' }>,
  ): string | null {
    const found = this.#deedsOf(named)
    const [at] = found
    const deed = at === undefined ? undefined : this.#deeds[at]
    if (!deed) return `${JSON.stringify(named)} is not to be done`
    const { step, thing } = deed.act
    if (named.does === 'take-out' && !this.#isOpen(step)) return this.#wrongAid(step)
    if (!this.#isOpen(step)) return `step ${step} is not open`
    const left = this.#left(step)
    const isLeft = (doing: string) => left.some(({ act }) => act.doing === doing)
    if (named.does !== 'take-out' && named.does !== 'apply' && isLeft('put on'))
      return 'something must be put on first'
    if (named.does === 'fill' && isLeft('fit')) return 'it is filled before all of it is on'
    if (named.does === 'confirm' && left.some(({ act }) => act.doing === 'fit' && act.thing === thing))
      return 'a mark is looked at before its piece is on'
    if (named.does !== 'fit' || thing?.kind !== 'lot' || named.count === undefined) return null
    const owed = thing.at === null ? thing.count - (this.#fitted.get(thing) ?? 0) : found.length
    return owed === named.count ? null : `${owed} of ${thing.name} are still off, not ${named.count}`
  }

  /** A rag is taken out before the last look at what hides it. */
  #wrongAid(step: number): string | null {
    const open = [...this.#taken].find((each) => this.#isOpen(each))
    if (open !== undefined) return `step ${open} is open`
    const hiding = this.#machine.steps.some(
      (_, at) =>
        this.#isHiding(at + 1) &&
        !this.#isClosed(at + 1) &&
        this.#isStartable(at + 1) &&
        [at + 1, ...this.#beneath(at + 1)].includes(step),
    )
    return hiding ? null : `nothing is about to hide what is in step ${step}`
  }

  #isHiding(step: number): boolean {
    return this.#machine.steps[step - 1]?.hides ?? false
  }

  /** A rag, a pin or a plug that is still in one of these steps. */
  #aidIn(steps: readonly number[]): string | null {
    for (const step of steps) {
      for (const thing of this.#machine.steps[step - 1]?.things ?? []) {
        if (thing.kind !== 'aid' || thing.where === null || !this.known.pieces.has(thing)) continue
        const at = this.#deeds.findIndex(({ act }) => act.doing === 'take out' && act.thing === thing)
        if (!this.isDone(at)) return thing.name
      }
    }
    return null
  }

  /** What is to do in a step before it can be closed. */
  #left(step: number): Deed[] {
    return this.#deeds.filter(
      (deed, at) =>
        deed.phase === 'build' &&
        deed.act.step === step &&
        BEFORE_DONE.has(deed.act.doing) &&
        !isTool(deed) &&
        !this.isDone(at),
    )
  }

  #tools(): Deed[] {
    return this.#deeds.filter((deed, at) => deed.act.doing === 'take out' && isTool(deed) && !this.isDone(at))
  }

  #gridOf(id: string): Grid | undefined {
    for (const [thing, grid] of this.#grids) if (this.known.tightenings.get(thing)?.id === id) return grid
    return undefined
  }

  #stepOf(thing: Thing): number {
    return this.#machine.steps.findIndex(({ things }) => things.includes(thing)) + 1
  }

  #isOpen(step: number): boolean {
    return this.#taken.has(step) && !this.#isClosed(step)
  }

  #isClosed(step: number): boolean {
    return this.#deeds.some(
      (deed, at) => (isOf(deed, 'done', step) || isOf(deed, 'extra', step)) && this.isDone(at),
    )
  }

  /** All that came off after it is back on and seen again where that was asked, and its own pieces are fit to go back. */
  #isStartable(step: number): boolean {
    return (
      this.#beneath(step).every((lower) => this.#isClosed(lower) && this.#isSeen(lower)) &&
      !this.#deeds.some((deed, at) => deed.act.step === step && this.#holds(deed) && !this.isDone(at)) &&
      !this.#deeds.some((deed, at) => isOf(deed, 'end', step) && !this.isDone(at))
    )
  }

  /** What is used once waits for a new one, and what was asked of a piece for its answer. */
  #holds({ act: { doing, thing } }: Deed): boolean {
    const isAsked = () =>
      this.#deeds.some(({ act }, at) => act.doing === 'ask' && act.thing === thing && this.isDone(at))
    return doing === 'supply' || doing === 'compare' || (doing === 'judge' && isAsked())
  }

  #isSeen(step: number): boolean {
    return !this.#deeds.some(
      (deed, at) => isOf(deed, 'see again', step) && this.#isCritical(step) && !this.isDone(at),
    )
  }

  #isCritical(step: number): boolean {
    return this.#deeds.some(
      (deed, at) => isOf(deed, 'plan', step) && /critical/.test(deed.act.say(this.known)) && this.isDone(at),
    )
  }

  /** Every step that is back before this one, by the order in which they came off and what was added. */
  #beneath(step: number): number[] {
    const { steps, extra } = this.#machine
    const found = new Set<number>()
    const reach = (upper: number) => {
      const lower = [
        ...steps.flatMap(({ after }, at) => (after.includes(upper - 1) ? [at + 1] : [])),
        ...extra.flatMap(({ before, after }, nth) => [
          ...(before === upper - 1 && this.#isAdded(nth) ? [extraNo(this.#machine, nth)] : []),
          ...(extraNo(this.#machine, nth) === upper && after !== null ? [after + 1] : []),
        ]),
      ]
      for (const each of lower) {
        if (found.has(each)) continue
        found.add(each)
        reach(each)
      }
    }
    reach(step)
    return [...found].filter((each) => this.#hasComeOff(each))
  }

  #isAdded(nth: number): boolean {
    const added = this.#deeds.flatMap((deed, at) =>
      deed.act.doing === 'plan' && deed.act.step === 0 ? [at] : [],
    )
    const at = added[nth]
    return at !== undefined && this.isDone(at)
  }

  #hasComeOff(step: number): boolean {
    if (step > this.#machine.steps.length) return true
    return this.#deeds.some((deed, at) => isOf(deed, 'begin', step) && this.isDone(at))
  }

  /** The deeds that what is named comes to, of those that are not done. */
  #deedsOf(named: Named): number[] {
    const is = this.#matcher(named)
    if (!is) return []
    return this.#deeds.flatMap(({ act, phase }, at) =>
      phase === 'build' && !this.isDone(at) && is(act) ? [at] : [],
    )
  }

  #matcher(named: Named): ((act: Act) => boolean) | null {
    const { pieces, marks, consumables, fluids } = this.known
    switch (named.does) {
      case 'take':
      case 'look':
        return ({ doing, step }) => doing === named.does && step === named.step
      case 'close':
        return ({ doing, step }) => (doing === 'done' || doing === 'extra') && step === named.step
      case 'clear':
        return ({ doing }) => doing === 'clear'
      case 'fit': {
        const { piece, position } = named
        return ({ doing, thing, at }) =>
          doing === 'fit' &&
          thing !== undefined &&
          [...(pieces.get(thing) ?? [])].some(
            ([place, id]) => id === piece && (position === undefined || thing.kind === 'lot' || place === at),
          )
      }
      case 'take-out':
        return ({ doing, thing }) =>
          doing === 'take out' &&
          thing !== undefined &&
          [...(pieces.get(thing)?.values() ?? [])].includes(named.piece)
      case 'apply':
        return ({ doing, thing }) =>
          doing === 'put on' && thing !== undefined && consumables.get(thing) === named.id
      case 'confirm':
        return ({ doing, thing, at }) =>
          doing === 'confirm' && thing !== undefined && marks.get(thing)?.get(at ?? '') === named.id
      case 'fill':
        return ({ doing, thing }) => doing === 'fill' && thing !== undefined && fluids.get(thing) === named.id
      default:
        return null
    }
  }
}

/** What a step wants before it is closed. */
const BEFORE_DONE: ReadonlySet<string> = new Set(['put on', 'fit', 'confirm', 'turn', 'take out', 'fill'])

function isOf({ act, phase }: Deed, doing: Act['doing'], step: number): boolean {
  return (
    act.doing === doing &&
    act.step === step &&
    (phase === 'build' || doing === 'end' || doing === 'begin' || doing === 'plan')
  )
}

/** A tool lies in the box or on the bench: it keeps no step open. */
function isTool({ act: { thing } }: Deed): boolean {
  return thing?.kind === 'aid' && thing.where === null
}

/** A scan asks, and records nothing. */
function isScan({ act }: Deed): boolean {
  return act.doing === 'scan'
}
