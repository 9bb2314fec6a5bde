import type { FalseBlock } from '../mechanic/mechanic.ts'
import { type Going, PLACES, type Where } from '../mistakes/mistake.ts'
import type { Group } from '../mistakes/shares.ts'

/** What came of a run of whole jobs, in plain JSON: one job a seed, each on a machine of its own. */
export interface Tally {
  /** The seeds that were run, `to` no more. */
  from: number
  to: number
  /** How many mistakes were to be made in each job: 0 for clean ones. */
  mistakes: number
  jobs: number
  /** Jobs in which the first start was cleared at the end. */
  cleared: number
  /** Jobs by the shape of their machine. */
  shapes: Record<string, number>
  rows: ClassTally[]
  /** Refusals and holds that no mistake explains. */
  falseBlocks: Seeded<FalseBlock>[]
  /** Pieces that were not in the machine at an open gate though no mistake that is told as unseen or asked accounts for them. */
  unexplained: Seeded<{ what: string }>[]
  costs: Costs
  /** By jobs, for the mistakes of one job may hang together. */
  byJob: { omissions: JobCount; places: JobCount }
}

/** Jobs in which such mistakes were made, and those of them in which any passed. */
export interface JobCount {
  jobs: number
  passed: number
}

/** Of one kind of mistake, made in one way. `stopped` + `asked` + `unseen` make `made`; what was put right by chance is not in it. */
export interface ClassTally {
  name: string
  group: Group
  going: Going
  /** What its share of all mistakes rests on. */
  from: string
  made: number
  /** Stopped before the first start, by where. */
  stopped: Record<Where, number>
  /** Named in a question that holds up nothing, and not put right. */
  asked: number
  /** The first start was cleared over it. */
  unseen: number
  /** Nothing found it, and its step was put together anew because of another mistake. */
  byChance: number
  /** Codes of the reasons that stopped it. */
  refusals: Record<string, number>
  /** The first that were asked or unseen, `MOST_TOLD` at the most. */
  passed: Seeded<{ what: string }>[]
}

/** Summed over all jobs of the run. */
export interface Costs {
  /** Lines said to the program. */
  lines: number
  entries: number
  /** Lines that the tool alone asks for: marks confirmed, steps closed, last looks, second looks, the round, the first start. */
  confirmations: number
  overrides: number
  scans: number
  refusals: number
  /** Asked under an answer, holding up nothing. */
  questions: number
}

export type Seeded<T> = T & { seed: number; shape: string }

export const MOST_TOLD = 20

/** So many stopped at each place: none, where it is not said. */
export function stoppedAt(counts: Partial<Record<Where, number>> = {}): Record<Where, number> {
  const none = Object.fromEntries(PLACES.map((place) => [place, 0])) as Record<Where, number>
  return { ...none, ...counts }
}
