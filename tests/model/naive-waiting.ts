import type { Entry, EntryOf } from '../../src/journal/entry.ts'
import type { Move } from '../../src/ledger/account.ts'

/** One parcel that left the house. */
interface Parcel {
  id: string
  /** What is in it and not back yet, one word an object. */
  away: string[]
  isLent: boolean
  told: boolean
}

/** One tube or tin in a step. */
interface Tube {
  id: string
  step: number
  workMinutes: number | undefined
  cureMinutes: number | undefined
  holdsUp: (string | number)[]
  /** When it went on, in milliseconds. */
  onAt: number | null
}

/** What the model has to be told of the rest of the job to judge what is waited for. */
export interface Around {
  isWaived: (id: string) => boolean
  /** What of a step is seen one by one: what is on, its marks and its rows of turns. */
  linesOf: (step: number) => string[]
  isDone: (step: number) => boolean
  isAfterStart: (step: number) => boolean
}

/** Parcels, tubes and second looks, with a clock on the wall: the part of the naive model that waits. */
export class NaiveWaiting {
  readonly parcels: Parcel[] = []
  readonly tubes: Tube[] = []
  readonly #critical = new Set<number>()
  /** What was seen again in each step. */
  readonly #seen = new Map<number, Set<string>>()
  /** When the last piece went on in a step, in milliseconds. */
  readonly #lastOn = new Map<number, number>()
  /** How many of a piece are out of the house, in a parcel or without one. */
  readonly #out = new Map<string, number>()
  /** Milliseconds. */
  now = 0

  read(entry: Entry): void {
    this.now = Date.parse(entry.at)
    if (entry.type === 'came-back') this.#unpack(entry)
    if ('moves' in entry) this.#goInAndOut(entry.moves)
    switch (entry.type) {
      case 'sent-out':
        this.#sendOut(entry)
        return
      case 'came-back':
        this.#comeBack(entry)
        return
      case 'consumable-set': {
        const { id, step, workMinutes, cureMinutes, before } = entry.consumable
        this.tubes.push({ id, step, workMinutes, cureMinutes, holdsUp: before, onAt: null })
        return
      }
      case 'consumable-dropped':
        this.tubes.splice(this.tubes.indexOf(this.#tube(entry.consumable)), 1)
        return
      case 'applied':
        this.#tube(entry.consumable).onAt = this.now
        return
      case 'fitted':
        this.#lastOn.set(entry.step, this.now)
        return
      case 'step-changed':
        if (entry.critical === null) this.#critical.delete(entry.step)
        if (entry.critical) this.#critical.add(entry.step)
        return
      case 'seen-again':
        this.#seen.set(entry.step, (this.#seen.get(entry.step) ?? new Set()).add(entry.line))
        return
      case 'failed':
        this.#fresh([entry.step])
        this.again(entry.steps)
        return
      case 'reopened':
        this.again(entry.steps)
        return
      default:
    }
  }

  /** What was put on in steps that are to be done again is wiped off, and everything there is seen anew. */
  again(steps: readonly number[]): void {
    this.#fresh(steps)
    for (const tube of this.tubes) if (steps.includes(tube.step)) tube.onAt = null
  }

  /** How many of a piece another job has. */
  lent(piece: string): number {
    return this.parcels
      .filter(({ isLent }) => isLent)
      .flatMap(({ away }) => away)
      .filter((word) => word === piece).length
  }

  /** Whether something is put on in a step. */
  isAskedIn(step: number): boolean {
    return this.tubes.some((tube) => tube.step === step)
  }

  /** What holds up the first start, one line each. */
  owed({ isWaived, linesOf, isDone, isAfterStart }: Around): string[] {
    const found: string[] = []
    for (const { id, away, told, isLent } of this.parcels)
      if (away.length === 0 && !told && !isLent && !isWaived(id)) found.push(`${id} back and not looked into`)
    for (const tube of this.tubes) {
      if (isWaived(tube.id)) continue
      if (!isAfterStart(tube.step)) {
        if (tube.onAt === null) found.push(`${tube.id} not put on`)
        const late = this.#minutesLate(tube)
        if (late > 0) found.push(`${tube.id} together ${late} min late`)
      }
      if (tube.holdsUp.includes('start') && this.isSoft(tube)) found.push(`${tube.id} still soft`)
    }
    for (const step of this.#critical) {
      if (isAfterStart(step) || !isDone(step) || isWaived(`check ${step}`)) continue
      const tubes = this.tubes.filter((tube) => tube.step === step).map(({ id }) => id)
      for (const line of [...linesOf(step), ...tubes])
        if (!this.#seen.get(step)?.has(line)) found.push(`step ${step} ${line} seen once only`)
    }
    return found
  }

  /** What is put on and still soft, and holds up a step. */
  softUnder(step: number): string[] {
    return this.tubes.filter((tube) => tube.holdsUp.includes(step) && this.isSoft(tube)).map(({ id }) => id)
  }

  /** Whether it is on and has not set: its time runs from the last piece that went on. What was together too late never sets. */
  isSoft(tube: Tube): boolean {
    const { step, cureMinutes, onAt } = tube
    if (onAt === null || cureMinutes === undefined || this.#minutesLate(tube) > 0) return false
    return this.now < Math.floor(Math.max(onAt, this.#lastOn.get(step) ?? 0) + cureMinutes * 60_000)
  }

  /** Each parcel and each tube in one line. */
  board(): string[] {
    return [
      ...this.parcels.map(({ id, away, told }) => `${id} ${[...away].sort()} ${told}`),
      ...this.tubes.map(({ id, step, onAt }) => `${id} step ${step} ${onAt}`),
    ]
  }

  #minutesLate({ step, workMinutes, onAt }: Tube): number {
    const last = this.#lastOn.get(step)
    if (onAt === null || workMinutes === undefined || last === undefined) return 0
    return Math.max(0, Math.ceil((last - Math.floor(onAt + workMinutes * 60_000)) / 60_000))
  }

  #sendOut({ outing: { id, pieces, job } }: EntryOf<'sent-out'>): void {
    const away = pieces.flatMap(({ piece, count }) => Array.from({ length: count }, () => piece as string))
    this.parcels.push({ id, away, isLent: job !== undefined, told: false })
  }

  /** What is taken out of this very parcel. */
  #unpack({ outing, moves }: EntryOf<'came-back'>): void {
    const { away } = this.#parcel(outing)
    for (const { piece, count, from } of moves)
      for (let one = 0; one < count && from === 'out'; one += 1) removeOne(away, piece)
  }

  /** What walked in at the door without its parcel is taken out of the one that went first. */
  #goInAndOut(moves: readonly Move[]): void {
    for (const { piece, count, from, to } of moves) {
      const by = (to === 'out' ? count : 0) - (from === 'out' ? count : 0)
      this.#out.set(piece, (this.#out.get(piece) ?? 0) + by)
    }
    for (const { piece, from } of moves) {
      if (from !== 'out') continue
      const isIn = ({ away }: Parcel) => away.includes(piece)
      const sent = () => this.parcels.flatMap(({ away }) => away).filter((each) => each === piece).length
      while (sent() > (this.#out.get(piece) ?? 0)) removeOne(this.parcels.find(isIn)?.away ?? [], piece)
    }
  }

  #comeBack({ outing, moves, tookOut }: EntryOf<'came-back'>): void {
    const parcel = this.#parcel(outing)
    for (const { piece, count, to } of moves)
      for (let one = 0; one < count && to === 'out'; one += 1) parcel.away.push(piece)
    if (tookOut) parcel.told = true
  }

  #parcel(id: string): Parcel {
    const parcel = this.parcels.find((each) => each.id === id)
    if (!parcel) throw new Error(`no parcel ${id} ever left`)
    return parcel
  }

  #fresh(steps: readonly number[]): void {
    for (const step of steps) {
      this.#seen.delete(step)
      this.#lastOn.delete(step)
    }
  }

  #tube(id: string): Tube {
    const tube = this.tubes.find((each) => each.id === id)
    if (!tube) throw new Error(`there is no tube ${id}`)
    return tube
  }
}

function removeOne(list: string[], one: string): void {
  const at = list.indexOf(one)
  if (at >= 0) list.splice(at, 1)
}
