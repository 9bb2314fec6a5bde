import type { PieceId } from '../../ledger/piece.ts'
import type { MeasureId } from '../facts.ts'
import type { OrderId } from '../waiting/waiting-facts.ts'

/** What a piece can need before it goes back. */
export type CheckKind = 'look' | 'measure' | 'clean' | 'compare'

/** One check that hangs on a piece and holds up its step until it is done. */
export interface CheckFacts {
  id: CheckId
  piece: PieceId
  kind: CheckKind
  /** What to look for, what to measure: each a few words. Empty where the kind says it all. */
  what: string[]
  /** The number of the last measurement before it was asked: only a later one answers it. */
  askedAfter: number
  done: { n: number; says?: string | undefined; measure?: MeasureId | undefined } | null
}
export type CheckId = `k${number}`

/** Pieces that belong together, as caps with the head they were bored in: to be replaced, one takes the others along. */
export interface BondFacts {
  pieces: PieceId[]
  reason?: string | undefined
}

export type VerdictKind = 'fit-again' | 'machine' | 'replace' | 'clean'

/** What was decided about a piece, and on what ground. The last one counts. */
export interface VerdictFacts {
  verdict: VerdictKind
  reason: string
  /** The entry that said so. */
  n: number
  measure?: MeasureId | undefined
  picture?: `g${number}` | undefined
  /** The piece that it was judged along with, because they belong together. */
  along?: PieceId | undefined
}

/** How one feature of a new piece is beside the old one. */
export type Likeness = 'alike' | 'differs' | 'wrong'

export interface ComparedFeature {
  feature: string
  how: Likeness
  says?: string | undefined
}

/** A new piece that is to be held beside the old one before that leaves. */
export interface ComparisonFacts {
  piece: PieceId
  /** The piece that came off the machine, whose home it takes. */
  old: PieceId
  /** As far as it was compared; a later word on a feature takes the place of an earlier one. */
  features: ComparedFeature[]
  verdict: 'due' | 'right' | 'wrong'
  /** The order line by which the new one came. */
  order?: OrderId | undefined
}

/** What is to be replaced or checked once something is found: the user's own list. */
export interface TriggerFacts {
  id: TriggerId
  /** What must be found: `metal in the oil`. */
  when: string
  items: TriggerItem[]
}
export type TriggerId = `h${number}`

export type TriggerItem =
  | { do: 'replace'; piece: PieceId }
  | { do: 'check'; piece: PieceId; kind: CheckKind; what: string[] }

/** Something that was found, and the lists that it opened. */
export interface FindingFacts {
  id: FindingId
  text: string
  piece?: PieceId | undefined
  step: number | null
  triggers: TriggerId[]
}
export type FindingId = `y${number}`
