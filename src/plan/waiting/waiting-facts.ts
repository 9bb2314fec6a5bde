import type { PieceId } from '../../ledger/piece.ts'

/** A price as it was typed, in the smallest unit of its currency. */
export interface PriceFacts {
  minor: number
  /** As typed; empty where none was said. */
  currency: string
  typed: string
  /** For all of it, not for each. */
  inAll?: true | undefined
}

/** What the user knows about buying a thing. */
export interface PartNotes {
  partNo?: string | undefined
  price?: PriceFacts | undefined
  source?: string | undefined
}

/** One line that was ordered, or is wanted and not ordered yet. */
export interface OrderFacts extends PartNotes {
  id: OrderId
  name: string
  /** The piece whose home waits for it; none for what is used up, for fluids and for what is only typed. */
  piece?: PieceId | undefined
  /** Pieces, or units of `unit`, such as litres or tubes. */
  count: number
  unit?: string | undefined
  /** Ordered in another size than the old one has: what arrives has it. */
  size?: string | undefined
  /** A day: `2026-12-04`. */
  due?: string | undefined
  ordered: boolean
  /** The day on which it was ordered. */
  since: string | null
  arrived: number
  /** Of those that arrived: how many are wrong and not sent back yet, and how many went back. */
  wrong: number
  returned: number
  cancelled: string | null
}
export type OrderId = `o${number}`

/** Pieces that were sent out of the house, and what is to come of it. */
export interface OutingFacts {
  id: OutingId
  to: string
  why?: string | undefined
  /** A day: `2026-12-04`. */
  due?: string | undefined
  expects?: string | undefined
  /** Of pieces lent to another job: its number. */
  job?: number | undefined
  /** The day on which they went. */
  since: string
  /** What went, and how many of each are not back yet. */
  pieces: { piece: PieceId; count: number; away: number }[]
  /** What was taken off before and stayed here. */
  aside: PieceId[]
  /** What the shop took out, in the user's words; null until somebody has said so. Not asked of what is lent. */
  tookOut: { text: string; pieces: PieceId[] } | null
  result?: string | undefined
}
export type OutingId = `b${number}`

export type ConsumableKind = 'sealant' | 'locker' | 'lubricant' | 'gasket' | 'other'

/** What is put on in a step: a line of its own, with the times that its maker gives. */
export interface ConsumableFacts {
  id: ConsumableId
  step: number
  kind: ConsumableKind
  /** What and where, in the user's words: `grey sealant on the sump face`. */
  name: string
  /** Which side is up, of a gasket. */
  side?: string | undefined
  /** How long the joint may be put together once it is on. */
  workMinutes?: number | undefined
  /** How long nothing of `before` may happen once the joint is together. */
  cureMinutes?: number | undefined
  /** What it holds up while it cures: steps, fillings, the first start. */
  before: CureTarget[]
  /** The last day on which it may be used. */
  expires?: string | undefined
  /** How much of it the job needs, for the list of what to buy. */
  amount?: string | undefined
  applied: { n: number; at: string } | null
}
export type ConsumableId = `s${number}`
export type CureTarget = number | `f${number}` | 'start'

/** One thing to see again in a critical step. */
export type SecondLine = PieceId | `m${number}` | `t${number}` | ConsumableId

export interface SecondLookFacts {
  line: SecondLine
  by?: string | undefined
  at: string
  says: string
}

/** Who did work in a step on the way back, and when last. The name is empty where nobody said one. */
export interface WorkFacts {
  by: string[]
  at: string
  /** When the last piece was fitted. */
  fittedAt: string | null
}
