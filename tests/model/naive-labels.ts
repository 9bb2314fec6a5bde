import type { Container, Entry } from '../../src/journal/entry.ts'
import { inForce } from './naive-model.ts'

/** A number on paper that no bag has: whether a stroke is drawn through it. */
export interface PaperLabel {
  no: number
  isVoid: boolean
}

/**
 * The numbers of a job as they are seen on its bags and sheets. What was once printed or written on a bag is never
 * rubbed out, also when the record takes it back. Throws when a number would be on two different things.
 */
export class NaiveLabels {
  /** Every number that was ever printed before there was a bag for it. */
  readonly #printed = new Set<number>()
  /** Every number that was ever written on a bag by hand. */
  readonly #written = new Set<number>()

  constructor(entries: readonly Entry[]) {
    for (const entry of entries) this.#read(entry)
    // What holds now: each bag once, and none from a label with a stroke through it.
    walk(entries)
  }

  #read(entry: Entry): void {
    if (entry.type === 'labels-dealt') {
      for (let no = entry.from; no <= entry.to; no += 1) {
        if (this.#printed.has(no) || this.#written.has(no)) throw new Error(`number ${no} was printed twice`)
        this.#printed.add(no)
      }
    }
    const bag = openedBy(entry)
    if (!bag || this.#printed.has(bag.no)) return
    if (this.#written.has(bag.no)) throw new Error(`number ${bag.no} was written on two bags`)
    this.#written.add(bag.no)
  }
}

/** The bags and the paper labels of a job as it stands, each by rising numbers. */
export function walk(entries: readonly Entry[]): { bags: number[]; paper: PaperLabel[] } {
  const bags = new Set<number>()
  const paper = new Map<number, boolean>()
  for (const entry of entries) {
    if (entry.type !== 'labels-dealt') continue
    for (let no = entry.from; no <= entry.to; no += 1) paper.set(no, false)
  }
  for (const entry of inForce(entries)) {
    const bag = openedBy(entry)
    if (bag) {
      if (bags.has(bag.no)) throw new Error(`number ${bag.no} is on two bags`)
      if (paper.get(bag.no)) throw new Error(`label ${bag.no} has a stroke through it and is on a bag`)
      paper.delete(bag.no)
      bags.add(bag.no)
    }
    const strokes = entry.type === 'labels-voided' ? entry.labels : []
    for (const no of strokes) {
      if (paper.get(no) !== false) throw new Error(`a stroke through label ${no}, which is on no sheet`)
      paper.set(no, true)
    }
    if (entry.type === 'container-voided' && paper.has(entry.container)) paper.set(entry.container, true)
  }
  const rising = (a: number, b: number) => a - b
  return {
    bags: [...bags].sort(rising),
    paper: [...paper].map(([no, isVoid]) => ({ no, isVoid })).sort((a, b) => a.no - b.no),
  }
}

/** The container that an entry opened, if it did. */
export function openedBy(entry: Entry): Container | undefined {
  if (entry.type === 'container-opened') return entry.container
  return 'opened' in entry ? entry.opened : undefined
}
