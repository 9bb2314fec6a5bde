import type { Entry, EntryOf } from '../../src/journal/entry.ts'

/** One line on the list that hangs beside the bench: what is to be looked at, and whether somebody has. */
interface Tick {
  id: string
  piece: string
  isMeasured: boolean
  done: boolean
}

/**
 * What was asked of pieces and what was said of them, on slips of paper: the part of the naive model that tells which
 * piece nobody has accepted yet.
 */
export class NaiveJudging {
  ticks: Tick[] = []
  /** The last word on a piece. */
  readonly words = new Map<string, string>()
  /** The new piece, the old one that it was laid beside, and what was seen then. */
  readonly beside = new Map<string, { old: string; seen: Map<string, string>; outcome: string }>()
  readonly together: string[][] = []
  readonly lists: string[] = []
  readonly finds: string[] = []

  read(entry: Entry): void {
    switch (entry.type) {
      case 'checks-set':
        this.#ask(entry.checks)
        return
      case 'checks-done':
        for (const id of entry.checks) this.#seenWell(id)
        return
      case 'check-dropped':
        this.ticks = this.ticks.filter((tick) => tick !== this.#tick(entry.check))
        return
      case 'judged':
        this.#judge(entry)
        return
      case 'bound':
        this.together.push([...entry.of])
        return
      case 'compared':
        this.#compare(entry)
        return
      case 'trigger-set':
        this.lists.push(`${entry.trigger.id} ${entry.trigger.when}`)
        return
      case 'trigger-dropped': {
        const at = this.lists.findIndex((list) => list.startsWith(`${entry.trigger} `))
        if (at < 0) throw new Error(`there is no list ${entry.trigger} to take down`)
        this.lists.splice(at, 1)
        return
      }
      case 'found-out':
        this.finds.push(`${entry.finding.id} ${entry.finding.text}`)
        this.#ask(entry.checks)
        for (const piece of entry.condemned) this.words.set(piece, 'replace')
        return
      case 'supplied':
        for (const { id, replaces } of entry.pieces) if (replaces) this.#takesThePlace(id, replaces)
        for (const { piece, old } of entry.compare ?? [])
          this.beside.set(piece, { old, seen: new Map(), outcome: 'due' })
        return
      default:
    }
  }

  /** Why nobody has accepted a piece, one line each; what is gone is not laid beside anything any more. Empty when it may go back, and when nobody asked. */
  against(piece: string, isWaived: (id: string) => boolean, isGone: boolean): string[] {
    const found: string[] = []
    const word = this.words.get(piece)
    if (word !== undefined && word !== 'fit-again') found.push(`${piece} judged ${word}`)
    // What is thrown away is not looked at any more.
    if (word === 'replace') return found
    const laid = this.beside.get(piece)
    if (laid && laid.outcome !== 'right' && !isGone) found.push(`${piece} beside ${laid.old} ${laid.outcome}`)
    for (const { id, done } of this.#of(piece)) if (!done && !isWaived(id)) found.push(`${id} not seen to`)
    return found
  }

  /** Everything on the slips, one line each. */
  slips(): string[] {
    return [
      ...this.ticks.map(({ id, piece, done }) => `${id} ${piece} ${done}`).sort(),
      ...[...this.words].map(([piece, word]) => `${piece} ${word}`).sort(),
      ...[...this.beside]
        .map(
          ([piece, { old, seen, outcome }]) =>
            `${piece} beside ${old} ${outcome}: ${[...seen].map(([what, how]) => `${what} ${how}`).sort()}`,
        )
        .sort(),
      ...this.together.map((lot) => `together ${lot}`),
      ...this.lists,
      ...this.finds,
    ]
  }

  #ask(checks: EntryOf<'checks-set'>['checks']): void {
    for (const { id, piece, kind } of checks) {
      if (this.ticks.some((tick) => tick.id === id)) throw new Error(`${id} is on the list twice`)
      this.ticks.push({ id, piece, isMeasured: kind === 'measure', done: false })
    }
  }

  #seenWell(id: string): void {
    const tick = this.#tick(id)
    tick.done = true
    // It was to be cleaned and looked at again, and that has been done to the last line.
    const { piece } = tick
    if (this.words.get(piece) === 'clean' && this.#of(piece).every(({ done }) => done))
      this.words.delete(piece)
  }

  #judge({ of: pieces, along, verdict, checks, count }: EntryOf<'judged'>): void {
    for (const id of checks) this.#tick(id).done = true
    // Some of many were thrown away, and nobody said a word about the others.
    if (count !== undefined) return
    for (const piece of [...pieces, ...along]) {
      this.words.set(piece, verdict)
      const laid = this.beside.get(piece)
      if (laid && verdict === 'fit-again') laid.outcome = 'right'
    }
  }

  #compare({ piece, old, features, verdict }: EntryOf<'compared'>): void {
    const laid = this.beside.get(piece) ?? { old, seen: new Map<string, string>(), outcome: 'due' }
    for (const { feature, how } of features) laid.seen.set(feature, how)
    this.beside.set(piece, { ...laid, old, outcome: verdict })
  }

  /** The new one is measured again; whatever else was still to be seen on the old one went with it. */
  #takesThePlace(piece: string, old: string): void {
    this.ticks = this.ticks.filter((tick) => tick.piece !== old || tick.isMeasured || tick.done)
    for (const tick of this.ticks) {
      if (tick.piece !== old || !tick.isMeasured) continue
      tick.piece = piece
      tick.done = false
    }
    for (const [at, lot] of this.together.entries())
      this.together[at] = lot.map((each) => (each === old ? piece : each))
  }

  #of(piece: string): Tick[] {
    return this.ticks.filter((tick) => tick.piece === piece)
  }

  #tick(id: string): Tick {
    const tick = this.ticks.find((each) => each.id === id)
    if (!tick) throw new Error(`nobody asked ${id}`)
    return tick
  }
}
