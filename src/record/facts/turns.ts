import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { LooseningId, TighteningId } from '../../plan/facts.ts'
import type { Tightening } from '../../plan/tightening.ts'

/** A fastener that is through a pass, `pass` counted from 0, by the entry that says so. */
export interface Turn {
  pass: number
  fastener: string
  entry: Entry
}

/** The history of one tightening, or of a loosening. */
export interface Turns {
  set: EntryOf<'tightening-set' | 'loosening-set'>
  /** What counts now, in the order in which it was done. */
  turns: Turn[]
  /** Turns that count no more, by the entry that took them back: work stopped, or a step reopened. */
  takenBack: { entry: Entry; turns: Turn[] }[]
  /** Fasteners that an interruption left in doubt. */
  suspects: Turn[]
  /** How it was set before, how doubts were settled, what never came to its torque, the wrench, the slackening. */
  acts: EntryOf<
    'angle-settled' | 'slackened' | 'torque-missed' | 'wrench-chosen' | 'condition-said' | 'tightening-set'
  >[]
}

/** Follows the grids of the fold, and keeps by which entry each tick stands. */
export class TurnsSeen {
  readonly #by = new Map<TighteningId | LooseningId, Turns>()
  readonly #inDoubt = new Set<TighteningId | LooseningId>()

  of(id: TighteningId | LooseningId): Turns | undefined {
    return this.#by.get(id)
  }

  /** @param state as it stands after the entry */
  see(state: State, entry: Entry): void {
    switch (entry.type) {
      case 'tightening-set':
        this.#begin(entry.tightening.id, entry)
        break
      case 'loosening-set':
        this.#begin(entry.loosening.id, entry)
        break
      case 'loosened':
        this.#compare(state, entry, entry.loosening)
        break
      case 'angle-settled':
      case 'slackened':
      case 'torque-missed':
      case 'wrench-chosen':
      case 'condition-said':
        this.#by.get(entry.tightening)?.acts.push(entry)
        this.#compare(state, entry, entry.tightening)
        break
      case 'tightened':
        this.#compare(state, entry, entry.tightening)
        break
      case 'stopped':
      case 'reopened':
      case 'failed':
        for (const id of this.#by.keys()) this.#compare(state, entry, id)
        break
      default:
    }
  }

  /** Set anew before anything was turned, it is told as it was set before. */
  #begin(id: TighteningId | LooseningId, set: Turns['set']): void {
    const known = this.#by.get(id)
    const before = known?.set.type === 'tightening-set' ? [known.set] : []
    this.#by.set(id, {
      set,
      turns: [],
      takenBack: [],
      suspects: [],
      acts: [...(known?.acts ?? []), ...before],
    })
  }

  #compare(state: State, entry: Entry, id: TighteningId | LooseningId): void {
    const facts = state.tightenings.get(id as TighteningId) ?? state.loosenings.get(id as LooseningId)
    const known = this.#by.get(id)
    if (!facts || !known) return
    const gone = known.turns.filter(({ pass, fastener }) => !facts.done[pass]?.has(fastener))
    if (gone.length > 0) known.takenBack.push({ entry, turns: gone })
    const standing = known.turns.filter((turn) => !gone.includes(turn))
    known.turns = [...standing, ...added(facts, standing, entry)]
    if (facts.suspect && !this.#inDoubt.has(id)) known.suspects.push({ ...facts.suspect, entry })
    if (facts.suspect) this.#inDoubt.add(id)
    else this.#inDoubt.delete(id)
  }
}

function added({ done }: Tightening, standing: readonly Turn[], entry: Entry): Turn[] {
  return done.flatMap((through, pass) =>
    [...through]
      .filter((fastener) => !standing.some((turn) => turn.pass === pass && turn.fastener === fastener))
      .map((fastener) => ({ pass, fastener, entry })),
  )
}
