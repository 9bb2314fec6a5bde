import type { Entry } from '../../src/journal/entry.ts'

/**
 * What an inspector writes down who reads every entry and knows nothing of the program: what stands against each piece.
 * A second telling of who may go back, from the entries in force alone.
 */
export class InspectionSheet {
  readonly #open = new Map<string, { piece: string; measured: boolean }>()
  readonly #closed = new Map<string, { piece: string; measured: boolean }>()
  readonly #waived = new Set<string>()
  readonly #condemned = new Map<string, string>()
  readonly #unlike = new Map<string, string>()

  constructor(entries: readonly Entry[]) {
    const takenBack = new Set<number>()
    for (const entry of entries) {
      if (entry.type === 'undone') takenBack.add(entry.entry)
      if (entry.type === 'redone') takenBack.delete(entry.entry)
    }
    for (const entry of entries) if (!takenBack.has(entry.n)) this.#read(entry)
  }

  /** What stands against a piece, in a few words each. */
  against(piece: string): string[] {
    const word = this.#condemned.get(piece)
    const unlike = this.#unlike.get(piece)
    const checks = [...this.#open].filter(([id, check]) => check.piece === piece && !this.#waived.has(id))
    return [
      ...(word === undefined ? [] : [word]),
      ...(unlike === undefined ? [] : [unlike]),
      ...checks.map(([id]) => id),
    ]
  }

  #read(entry: Entry): void {
    switch (entry.type) {
      case 'checks-set':
      case 'found-out':
        for (const { id, piece, kind } of entry.checks)
          this.#open.set(id, { piece, measured: kind === 'measure' })
        if (entry.type === 'found-out')
          for (const piece of entry.condemned) this.#condemned.set(piece, 'replace')
        return
      case 'checks-done':
        for (const id of entry.checks) this.#close(id, true)
        return
      case 'check-dropped':
        this.#open.delete(entry.check)
        return
      case 'judged':
        for (const id of entry.checks) this.#close(id, false)
        if (entry.count !== undefined) return
        for (const piece of [...entry.of, ...entry.along]) {
          if (entry.verdict === 'fit-again') {
            this.#condemned.delete(piece)
            // A named word with its reason stands in for laying it beside the old one.
            this.#unlike.delete(piece)
          } else this.#condemned.set(piece, entry.verdict)
        }
        return
      case 'compared':
        if (entry.verdict === 'right') this.#unlike.delete(entry.piece)
        else this.#unlike.set(entry.piece, entry.verdict)
        return
      case 'overridden':
        if (/^k\d/.test(entry.target)) this.#waived.add(entry.target)
        return
      case 'supplied':
        for (const { id, replaces } of entry.pieces) if (replaces !== undefined) this.#succeed(id, replaces)
        for (const { piece } of entry.compare ?? []) this.#unlike.set(piece, 'due')
        return
      default:
    }
  }

  /** The last check passed lifts the word that it was to be cleaned and seen again. */
  #close(id: string, lifts: boolean): void {
    const check = this.#open.get(id)
    if (!check) return
    this.#open.delete(id)
    this.#closed.set(id, check)
    const isLast = ![...this.#open.values()].some(({ piece }) => piece === check.piece)
    if (lifts && isLast && this.#condemned.get(check.piece) === 'clean') this.#condemned.delete(check.piece)
  }

  /** A new piece is measured as the old one was; all else that was to be seen went with the old one. */
  #succeed(id: string, old: string): void {
    for (const list of [this.#open, this.#closed]) {
      for (const [check, { piece, measured }] of [...list]) {
        if (piece !== old) continue
        list.delete(check)
        if (measured) this.#open.set(check, { piece: id, measured })
      }
    }
  }
}
