import type { Entry } from '../../src/journal/entry.ts'
import type { Move } from '../../src/ledger/account.ts'
import type { Piece } from '../../src/ledger/piece.ts'
import { NaiveDrawings } from './naive-drawings.ts'
import { NaiveJudging } from './naive-judging.ts'
import { NaiveShopping } from './naive-shopping.ts'
import { NaiveWaiting } from './naive-waiting.ts'
import { NaiveWork } from './naive-work.ts'

/** One physical object. Six alike bolts are six of these. */
interface Thing {
  piece: string
  where: string
  /** A decision says that this one stays lost. */
  givenUp: boolean
}

/** What a label on the machine would say: which piece goes here, and how many. */
interface Seat {
  piece: Piece
  position: string | undefined
  should: number
}

/**
 * The whole job a second time, told from its entries alone and shared with nothing of `src` but their types:
 * a list of physical objects, moved one at a time, and a look at each of them in the end. Slow and plain on
 * purpose. Throws when an entry does what no hand could do.
 */
export class NaiveModel {
  readonly things: Thing[] = []
  readonly seats = new Map<string, Seat>()
  readonly work = new NaiveWork()
  readonly drawings = new NaiveDrawings()
  readonly judging = new NaiveJudging()
  readonly shopping = new NaiveShopping()
  readonly waiting = new NaiveWaiting()

  constructor(entries: readonly Entry[]) {
    for (const entry of inForce(entries)) this.read(entry)
    // The clock on the wall is not turned back with what is undone.
    const last = entries.at(-1)
    if (last) this.waiting.now = Date.parse(last.at)
  }

  /** Carries on by one entry that is neither an undo nor a redo. */
  read(entry: Entry): void {
    this.#inOrder(entry)
    this.#accepted(entry)
    this.#pieces(entry)
    this.#decisions(entry)
    const ended = this.work.read(entry)
    this.drawings.read(entry)
    this.judging.read(entry)
    this.shopping.read(entry)
    this.waiting.read(entry)
    this.waiting.again(ended)
    if (entry.type === 'reopened' || entry.type === 'failed') this.#nothingLeftOn(entry.steps)
  }

  /** How many objects of each piece are where, as text: `p3 c2 4`. */
  counts(): string[] {
    const found = new Map<string, number>()
    for (const { piece, where } of this.things) {
      const key = `${piece} ${where}`
      found.set(key, (found.get(key) ?? 0) + 1)
    }
    return [...found].map(([key, count]) => `${key} ${count}`).sort()
  }

  /** What is written on each piece, as text: `p3 shim 2.45`. */
  sizes(): string[] {
    return [...this.seats].map(([id, { piece }]) => `${id} ${piece.name} ${piece.size}`)
  }

  /** Everything that is not as it must be at the first start, one line each. Empty when the machine is whole. */
  unexplained(): string[] {
    const found: string[] = []
    for (const [id, seat] of this.seats) {
      found.push(...this.#unexplainedOf(id, seat))
      if (seat.should > 0) found.push(...this.#against(id))
    }
    return [
      ...found,
      ...this.work.owed((step) => this.#hasSomethingToPutBack(step)),
      ...this.waiting.owed({
        isWaived: this.#isWaived,
        linesOf: (step) => [...this.#onIn(step), ...this.work.linesOf(step)],
        isDone: (step) => this.work.isIn(step, 'done'),
        isAfterStart: (step) => this.work.isAfterStart(step),
      }),
    ].sort()
  }

  #pieces(entry: Entry): void {
    if ('pieces' in entry) {
      for (const piece of entry.pieces) {
        if (this.seats.has(piece.id)) throw new Error(`${piece.id} is there twice`)
        this.seats.set(piece.id, { piece, position: piece.home.position, should: piece.should })
      }
      for (const { piece, count, at } of entry.openings) {
        for (let one = 0; one < count; one += 1) this.things.push({ piece, where: at, givenUp: false })
      }
      // A new piece takes the home of the old one: then nothing is owed for the old one any more.
      for (const { replaces } of entry.pieces) if (replaces) this.#seat(replaces).should = 0
    }
    if ('moves' in entry) for (const move of entry.moves) this.#carry(move)
  }

  /** Carries one object after another. */
  #carry({ piece, count, from, to, position }: Move): void {
    const seat = this.#seat(piece)
    for (let one = 0; one < count; one += 1) {
      const there = this.#at(piece, from)
      // Nobody can tell which of the lost ones turned up: the doubt is kept, so it is one that was given up.
      const thing = there.find(({ givenUp }) => givenUp) ?? there[0]
      if (!thing) throw new Error(`no ${piece} is at ${from}, so none can go to ${to}`)
      thing.where = to
      thing.givenUp = false
      if (to !== 'machine' || isKit(seat.piece)) continue
      if (seat.position !== undefined && seat.position !== position) {
        throw new Error(`${piece} belongs at ${seat.position} and went to ${position}`)
      }
      if (this.#at(piece, 'machine').length > seat.should)
        throw new Error(`more ${piece} at home than belong there`)
      const intruder = [...this.seats].find(
        ([other, { piece: its, position: held, should }]) =>
          other !== piece &&
          held !== undefined &&
          should > 0 &&
          held === position &&
          its.home.at === seat.piece.home.at &&
          its.name === seat.piece.name &&
          this.#at(other, 'machine').length > 0,
      )
      if (intruder) throw new Error(`${intruder[0]} and ${piece} are both at ${position}`)
    }
  }

  #decisions(entry: Entry): void {
    if (entry.type === 'rehomed') {
      for (const { piece, position } of entry.homes) this.#seat(piece).position = position
    }
    if (entry.type === 'renamed') {
      for (const piece of entry.mates) {
        const seat = this.#seat(piece)
        seat.piece = { ...seat.piece, name: entry.name }
      }
    }
    if (entry.type === 'sized') {
      for (const { piece, size } of entry.sizes) {
        const seat = this.#seat(piece)
        seat.piece = { ...seat.piece, size }
      }
    }
    if (entry.type !== 'decided') return
    if (entry.what === 'left-off') this.#seat(entry.piece).should -= entry.count
    if (entry.what !== 'lost-accepted') return
    const lost = this.#at(entry.piece, 'lost').filter(({ givenUp }) => !givenUp)
    for (let one = 0; one < entry.count; one += 1) {
      const thing = lost[one]
      if (!thing) throw new Error(`${entry.count} ${entry.piece} are given up and ${lost.length} are lost`)
      thing.givenUp = true
    }
  }

  #unexplainedOf(id: string, { piece, should }: Seat): string[] {
    const found: string[] = []
    const lost = this.#at(id, 'lost').filter(({ givenUp }) => !givenUp).length
    if (lost > 0) found.push(`${id} lost ${lost}`)
    const home = isKit(piece) ? 'toolbox' : 'machine'
    const elsewhere = new Map<string, number>()
    for (const { where } of this.things.filter((thing) => thing.piece === id)) {
      if ([home, 'scrap', 'lost'].includes(where)) continue
      elsewhere.set(where, (elsewhere.get(where) ?? 0) + 1)
    }
    const athome = this.#at(id, 'machine').length
    // Surplus that another job has is in nobody's way either, as long as what is here is enough.
    const out = elsewhere.get('out') ?? 0
    const here = [...elsewhere].filter(([where]) => !['out', 'supplier', 'spare'].includes(where))
    const wanted = Math.max(0, should - athome - here.reduce((sum, [, count]) => sum + count, 0))
    const surplus = isKit(piece) ? 0 : Math.min(this.waiting.lent(id), Math.max(0, out - wanted))
    if (surplus > 0) elsewhere.set('out', out - surplus)
    if (elsewhere.get('out') === 0) elsewhere.delete('out')
    // What is still at the supplier, or laid aside as surplus, is in nobody's way: it counts for what is owed only.
    const reserves = isKit(piece)
      ? []
      : ['supplier', 'spare'].map((where) => ({ where, count: elsewhere.get(where) ?? 0 }))
    for (const { where } of reserves) elsewhere.delete(where)
    for (const [where, count] of elsewhere) found.push(`${id} lies ${where} ${count}`)
    if (isKit(piece)) return found

    if (athome > should) found.push(`${id} too many at home ${athome - should}`)
    const lying = [...elsewhere.values()].reduce((sum, count) => sum + count, 0)
    let owed = Math.max(0, should - athome - lying)
    for (const { where, count } of reserves) {
      const part = Math.min(owed, count)
      if (part > 0) found.push(`${id} lies ${where} ${part}`)
      owed -= part
    }
    if (owed > 0) found.push(`${id} short ${owed}`)
    return found
  }

  #hasSomethingToPutBack(step: number): boolean {
    const seats = [...this.seats.values()].filter(({ piece }) => piece.step === step)
    return (
      seats.some(({ piece, should }) => piece.kind === 'aid' || (!isKit(piece) && should > 0)) ||
      this.waiting.isAskedIn(step)
    )
  }

  readonly #isWaived = (id: string): boolean => this.work.waived.has(id)

  #against(id: string): string[] {
    const own = this.things.filter(({ piece }) => piece === id)
    const isGone = own.length > 0 && own.every(({ where }) => ['supplier', 'scrap', 'lost'].includes(where))
    return this.judging.against(id, this.#isWaived, isGone)
  }

  /** The pieces of a step of which at least one is on. */
  #onIn(step: number): string[] {
    return [...this.seats]
      .filter(([, { piece, should }]) => piece.step === step && !isKit(piece) && should > 0)
      .map(([id]) => id)
      .filter((id) => this.#at(id, 'machine').length > 0)
  }

  /** No step is closed over a piece that nobody has accepted, whatever else is waved through. */
  #accepted(entry: Entry): void {
    if (entry.type !== 'build-done') return
    for (const [id, { piece, should }] of this.seats) {
      if (piece.step !== entry.step || should <= 0 || isKit(piece)) continue
      const against = this.#against(id)
      if (against.length > 0) throw new Error(`step ${entry.step} was closed over ${against}`)
    }
  }

  /** While no gate was passed over, a step starts only when everything beneath it is done, near or far. */
  #inOrder(entry: Entry): void {
    const starts =
      entry.type === 'build-began' ||
      (entry.type === 'build-done' && !this.work.isUnderWay(entry.step)) ||
      (entry.type === 'fitted' && entry.began)
    if (!starts || !this.work.inOrder) return
    const lower = this.work.undoneBeneath(entry.step, (step) => this.#hasSomethingToPutBack(step))
    if (lower !== null) throw new Error(`step ${entry.step} was begun over step ${lower}, which is not done`)
    const soft = this.waiting.softUnder(entry.step).filter((id) => !this.#isWaived(id))
    if (soft.length > 0) throw new Error(`step ${entry.step} was begun over ${soft}, which has not set`)
  }

  /** What was reopened, and what was built on top of it, must be off the machine to the last bolt. */
  #nothingLeftOn(steps: readonly number[]): void {
    const off = new Set([...steps, ...this.work.builtOn(steps)])
    for (const { piece, where } of this.things) {
      const seat = this.#seat(piece)
      if (where === 'machine' && !isKit(seat.piece) && off.has(seat.piece.step)) {
        throw new Error(`step ${seat.piece.step} was reopened and ${piece} is still on`)
      }
    }
  }

  #at(piece: string, where: string): Thing[] {
    return this.things.filter((thing) => thing.piece === piece && thing.where === where)
  }

  #seat(piece: string): Seat {
    const seat = this.seats.get(piece)
    if (!seat) throw new Error(`nobody has seen ${piece}`)
    return seat
  }
}

/** The entries that still hold, by walking back and forth as a person would with undo and redo. */
export function inForce(entries: readonly Entry[]): Entry[] {
  const kept: Entry[] = []
  const taken: Entry[] = []
  for (const entry of entries) {
    // Ink on paper is neither taken back nor brought back.
    if (entry.type === 'labels-dealt') continue
    if (entry.type === 'undone') {
      const last = kept.pop()
      if (last?.n !== entry.entry) throw new Error(`entry ${entry.entry} was taken back out of turn`)
      taken.push(last)
    } else if (entry.type === 'redone') {
      const last = taken.pop()
      if (last?.n !== entry.entry) throw new Error(`entry ${entry.entry} was brought back out of turn`)
      kept.push(last)
    } else {
      kept.push(entry)
      taken.length = 0
    }
  }
  return kept
}

function isKit({ kind }: Piece): boolean {
  return kind === 'aid' || kind === 'tool'
}
