import type { Ledger } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Tightening } from './tightening.ts'

export type StepKind =
  | 'refit'
  | 'clean'
  | 'inspect'
  | 'measure'
  | 'prime'
  | 'align'
  | 'fill'
  | 'turn'
  | 'check'
  | 'other'

/** `both`: came off and goes back. `build`: only on the way back. `after-start`: after the first start. */
export type StepWay = 'both' | 'build' | 'after-start'

/** How far a step is on the way back. `redo`: was done or under way, and reopened. */
export type Built = 'open' | 'underway' | 'done' | 'redo'

export interface StepFacts {
  no: number
  title: string
  way: StepWay
  kind: StepKind
  /** Strip order: the steps that had to be off before this one could come off. */
  after: number[]
  /** Steps that must be built before this one, beyond what the strip order says. */
  needs: number[]
  /** Whether it hides others from sight, so that a last look comes before it. */
  hides: boolean
  /** Whether its strip side is still open. */
  stripping: boolean
  built: Built
  /** Whether the last look before it was taken and nothing beneath was touched since. */
  looked: boolean
  /** When it is due after the first start, in the user's words. */
  due?: string | undefined
}

export interface FluidFacts {
  id: FluidId
  name: string
  litresOut: number
  /** The amount that came out, in the unit that was typed. */
  typed: string
  step: number
  filledLitres: number | null
}
export type FluidId = `f${number}`

export interface MarkFacts {
  id: MarkId
  text: string
  /** The piece that carries it, if it is on one. */
  piece?: PieceId | undefined
  step: number
  confirmed: boolean
}
export type MarkId = `m${number}`

export interface TighteningFacts extends Tightening {
  id: TighteningId
  name: string
  piece: PieceId
  step: number
}
export type TighteningId = `t${number}`

export type FaultKind = 'broken' | 'snapped' | 'cracked' | 'stripped'

/** Something found broken that leaves work at its home, such as a stud snapped in its hole. */
export interface FaultFacts {
  id: FaultId
  kind: FaultKind
  piece: PieceId
  count: number
  step: number
  settled: string | null
}
export type FaultId = `x${number}`

/** A recount that did not agree with the ledger and is not explained yet. */
export interface DifferenceFacts {
  id: DifferenceId
  container: number
  /** The piece that was counted; null for pieces that the record does not know there. */
  piece: PieceId | null
  expected: number
  counted: number
  settled: string | null
}
export type DifferenceId = `d${number}`

/** What an override or a waiver stands for: a gate of a step, or one thing owed. */
export type DecisionTarget =
  | `start ${number}`
  | `finish ${number}`
  | `look ${number}`
  | `check ${number}`
  | MarkId
  | TighteningId
  | FluidId
  | FaultId

/** What the plan asks of the folded record: which things are there and what has happened to them. */
export interface PlanFacts {
  ledger: Ledger
  steps: ReadonlyMap<number, StepFacts>
  fluids: ReadonlyMap<FluidId, FluidFacts>
  marks: ReadonlyMap<MarkId, MarkFacts>
  tightenings: ReadonlyMap<TighteningId, TighteningFacts>
  faults: ReadonlyMap<FaultId, FaultFacts>
  differences: ReadonlyMap<DifferenceId, DifferenceFacts>
  /** Gates and things owed that were overridden, with the reason given. */
  overrides: ReadonlyMap<DecisionTarget, string>
  /** The codes of the reasons that stood when an override was given: it passes these over, and no later ones. */
  passedOver: ReadonlyMap<DecisionTarget, ReadonlySet<string>>
  /** How many of a lost piece were accepted as lost, by a decision of its own. */
  lostAccepted: ReadonlyMap<PieceId, number>
  /** Single-use pieces that have been fitted and taken off once: they do not go back. */
  used: ReadonlySet<PieceId>
  /** Whether the first start is cleared and nothing was touched since. */
  cleared: boolean
  started: boolean
  closed: boolean
}
