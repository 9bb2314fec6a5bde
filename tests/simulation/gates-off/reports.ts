import type { FalseBlock } from '../mechanic/mechanic.ts'
import type { Where } from '../mistakes/mistake.ts'

/** What came of one job while some gates were off. */
export interface Without {
  /** Of each mistake: where it was stopped, that it was only asked about, or that nobody saw it. */
  seen: (Where | 'asked' | 'unseen' | 'by chance')[]
  /** The codes of the refusals that stopped them. */
  refusals: string[]
  falseBlocks: FalseBlock[]
  /** Whether the first start was cleared. */
  cleared: boolean
}

/** What came of a mistake at a wall of which so many gates were off. */
export interface Climb extends Without {
  /** Which of the walls. */
  wall: number
  /** How many of its gates were off, from the first. */
  off: number
}

/** What came of a job without a mistake while something held up what is in order; null for nothing. */
export interface Held extends Without {
  by: string | null
}

/** What came of mistakes that a group of gates does not stand before, while all of that group were off. */
export interface Beside extends Without {
  group: string
}

/** What the program with switches says. */
export interface GatesOffReport {
  climbs: Climb[]
  beside: Beside[]
  held: Held[]
}
