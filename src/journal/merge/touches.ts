import type { Move } from '../../ledger/account.ts'
import type { Piece, PieceId } from '../../ledger/piece.ts'
import { carrierOf, containerOf, slotOf } from '../../ledger/place.ts'
import { buildNeeds, isLast } from '../../plan/order.ts'
import { inSingular } from '../../trade/bag-line/name-words.ts'
import type { StripStep } from '../entry.ts'
import type { State } from '../state.ts'
import { type Kind, numberOf } from './references.ts'

/** What an entry has to do with what is known by the same name on both ways. */
export interface Touched {
  /** What it says something new about: nothing else that was written elsewhere may have changed or used it. */
  changes: Set<string>
  /** What it rests on: it must be as it was. */
  reads: Set<string>
  /** What it claims to have seen: nothing may have been added there. What comes later is no matter, it ends the claim. */
  sees: Set<string>
  /** What it adds to. Any number of entries may. */
  stirs: Set<string>
  /** What got its number by it. */
  deals: Set<string>
}

/** The name of a numbered thing, the same on both ways for the same thing. */
export type NameOf = (kind: Kind, no: number) => string

/** Which copy an entry stands in: the one that is kept, or the one that is taken over. */
export type Side = 'here' | 'there'

/** Gathers what one entry touches. */
export class Touches implements Touched {
  readonly changes = new Set<string>()
  readonly reads = new Set<string>()
  readonly sees = new Set<string>()
  readonly stirs = new Set<string>()
  readonly deals = new Set<string>()
  readonly state: State
  readonly side: Side
  readonly #nameOf: NameOf

  constructor(state: State, nameOf: NameOf, side: Side) {
    this.state = state
    this.#nameOf = nameOf
    this.side = side
  }

  /** A thing by its number, and what about it. */
  of(kind: Kind, id: number | string, what = ''): string {
    const name = this.#nameOf(kind, typeof id === 'number' ? id : Number(id.slice(1)))
    return what === '' ? name : `${name} ${what}`
  }

  /** A thing by its number with its letter, and what about it. */
  ofId(id: string, what = ''): string {
    const { kind, no } = numberOf(id) ?? { kind: 'piece', no: 0 }
    return this.of(kind, no, what)
  }

  /** A record's work as a whole: what a clearance rests on, and what no machine may have run without. */
  work(): void {
    this.stirs.add('work')
    this.reads.add('start')
  }

  /** Pieces go from place to place. */
  moves(moves: readonly Move[]): void {
    for (const { piece, from, to } of moves) {
      this.changes.add(this.of('piece', piece, 'place'))
      for (const place of [from, to]) {
        const container = containerOf(place)
        if (container === null) continue
        this.stirs.add(this.of('container', container, 'contents'))
        const slot = slotOf(place)
        if (slot !== null) this.changes.add(this.of('container', container, `slot ${slot}`))
      }
      const carrier = carrierOf(to)
      if (carrier !== null) this.reads.add(this.of('piece', carrier, 'place'))
    }
  }

  /** Moves by hand, after which nobody can say what lies above what. */
  looseMoves(moves: readonly Move[]): void {
    this.moves(moves)
    if (moves.some(({ from, to }) => from === 'machine' || to === 'machine')) this.stirs.add('machine')
  }

  /** Pieces enter the record: the same piece at the same home may have entered on the other way. */
  enter(pieces: readonly Piece[]): void {
    for (const { home, name, replaces } of pieces) {
      this.home(home.at, name, home.position)
      if (replaces !== undefined) this.changes.add(this.of('piece', replaces, 'heir'))
    }
  }

  /** Something is asked of a piece, or drawn or said of it, that the one which takes its home inherits. */
  ask(piece: PieceId): void {
    this.sees.add(this.of('piece', piece, 'heir'))
  }

  /** A home is taken by a name, at a position or as a whole. */
  home(at: string, name: string, position?: string | undefined): void {
    const home = `home ${at.toLowerCase()} of ${inSingular(name)}`
    if (position === undefined) this.changes.add(home)
    else {
      this.reads.add(home)
      this.changes.add(`${home} at ${position}`)
      this.stirs.add('positions')
    }
  }

  /** A strip step begins: what had to be off before it must not be back on. */
  strip({ title, after }: StripStep): void {
    this.changes.add(`strip ${inSingular(title)}`)
    for (const earlier of after) {
      this.reads.add(this.of('step', earlier, 'built'))
      this.stirs.add(this.of('step', earlier, 'needs'))
    }
  }

  /** Something more belongs to a step, which must not be closed. */
  addTo(step: number): void {
    this.reads.add(this.of('step', step, 'built'))
  }

  /** Work on the way back: the step and those beneath it are as they were, and nothing more came beneath it. */
  buildIn(step: number | undefined): void {
    if (step === undefined) return
    this.reads.add(this.of('step', step, 'built'))
    this.sees.add(this.of('step', step, 'needs'))
    const { steps } = this.state
    for (const lower of buildNeeds(steps).get(step) ?? []) this.reads.add(this.of('step', lower, 'built'))
    // What comes last of all goes over all.
    const facts = steps.get(step)
    if (facts && isLast(facts)) this.sees.add('work')
  }
}
