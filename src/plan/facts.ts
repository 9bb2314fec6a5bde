import type { Ledger } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { ContainerPlace } from '../ledger/place.ts'
import type { Measurement } from '../trade/measuring/measurement.ts'
import type { PlacedPosition, PositionLayout } from '../trade/position-layout/position-layout.ts'
import type { OrderRule } from '../trade/tightening-order/order.ts'
import type {
  BondFacts,
  CheckFacts,
  CheckId,
  ComparisonFacts,
  FindingFacts,
  FindingId,
  TriggerFacts,
  TriggerId,
  VerdictFacts,
} from './judging/judging-facts.ts'
import type { Tightening } from './tightening.ts'
import type {
  ConsumableFacts,
  ConsumableId,
  OrderFacts,
  OrderId,
  OutingFacts,
  OutingId,
  PartNotes,
  SecondLookFacts,
  WorkFacts,
} from './waiting/waiting-facts.ts'

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
  /** When it is due after the first start, in the user's words; `last` of one that comes last of the way back. */
  due?: string | undefined
  /** Of a step in which the machine is turned over by hand: full turns asked for, where the user said how many. */
  turns?: number | undefined
  /** Full turns made since it was taken up and work was not broken off. */
  turned: number
  /** How long it takes on the way back, by the user's word. */
  minutes?: number | undefined
  /** Seen again before anything rests on it: by somebody else, or by the same person so much later. */
  critical?: { afterMinutes: number } | undefined
  /** The work done in it since it was opened or reopened. */
  work: WorkFacts | null
}

/** The time for which the plan is asked. */
export interface Clock {
  /** ISO 8601, in UTC; empty before the first entry. */
  at: string
  /** The day where the user is: `2026-12-04`. */
  today: string
  /** Who asks, where they have said so. */
  by?: string | undefined
}

/** Which way a piece's arrow points in the drawing of its positions. */
export type Arrow = 'up' | 'right' | 'down' | 'left'

/** Where the positions of a pattern lie on the machine, as the user drew them. */
export interface LayoutFacts extends PositionLayout {
  /** The pieces whose positions it shows. */
  pieces: PieceId[]
  places: (PlacedPosition & { arrow?: Arrow | undefined })[]
}

/** A shim, and the valve that it belonged to. */
export interface ShimAt {
  position: string
  piece: PieceId
}

export interface MeasureFacts {
  id: MeasureId
  /** What was measured, in the user's words. A later one of the same name takes its place. */
  name: string
  piece?: PieceId | undefined
  step: number | null
  measurement: Measurement
  /** The shims at their homes at that time: of clearances at valves, where the record knew them. */
  shims?: ShimAt[] | undefined
}
export type MeasureId = `q${number}`

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
  /** Other lots that are tightened in the same order, as the long bolt among short ones. */
  with?: PieceId[] | undefined
  step: number
  /** What made the order: the manual, a rule, or nothing but the names. */
  orderBy?: OrderBy | undefined
  /** Threads dry, oiled and the like: part of every specification. */
  condition?: string | undefined
  /** Why values that were questioned are right, in the user's words. */
  because?: string | undefined
  wrench?: WrenchFacts | undefined
}
export type TighteningId = `t${number}`
export type OrderBy = 'manual' | OrderRule

/** The torque wrench in use, and what stands between it and the fastener. */
export interface WrenchFacts {
  typed: string
  leastNewtonMetres?: number | undefined
  mostNewtonMetres?: number | undefined
  leverMm?: number | undefined
  adapterMm?: number | undefined
  angleDegrees?: number | undefined
}

/** Fasteners eased in steps while they come off: an aid to the hands, which holds up nothing. */
export interface LooseningFacts extends Tightening {
  id: LooseningId
  name: string
  step: number
  /** Known where it was said for fasteners that are not in the record yet. */
  layout?: PositionLayout | undefined
}
export type LooseningId = `l${number}`

/** `no-torque`: turned, and never came to its torque. */
export type FaultKind = 'broken' | 'snapped' | 'cracked' | 'stripped' | 'no-torque'

/** Something found broken that leaves work at its home, such as a stud snapped in its hole. */
export interface FaultFacts {
  id: FaultId
  kind: FaultKind
  piece: PieceId
  count: number
  step: number
  settled: string | null
  /** Of one that never came to its torque. */
  in?: { tightening: TighteningId; fastener: string; says: string } | undefined
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

/** What of a piece was taken out of a container, and is not back in it. */
export interface TakenOut {
  count: number
  /** Where the last of it lay: a slot, where the container has some. */
  from: ContainerPlace
  /** When the last of it was taken out; ISO 8601, in UTC. */
  at: string
}

/** What a copy of the job said and did not fit when the two were merged. */
export interface LeftOutFacts {
  id: LeftOutId
  /** The entry that records the merge. */
  n: number
  /** Where the copy lay. */
  copy: string
  /** The id of the entry there, when it was written, and by whom where that was said. */
  entry: string
  at: string
  by?: string | undefined
  /** What it says, in words. */
  says: string
  settled: string | null
}
export type LeftOutId = `w${number}`

/** What an override or a waiver stands for: a gate of a step, or one thing owed. */
export type DecisionTarget =
  | `start ${number}`
  | `finish ${number}`
  | `look ${number}`
  | `check ${number}`
  | MarkId
  | TighteningId
  | LooseningId
  | FluidId
  | FaultId
  | CheckId
  | OutingId
  | ConsumableId

/** What the plan asks of the folded record: which things are there and what has happened to them. */
export interface PlanFacts {
  ledger: Ledger
  steps: ReadonlyMap<number, StepFacts>
  fluids: ReadonlyMap<FluidId, FluidFacts>
  marks: ReadonlyMap<MarkId, MarkFacts>
  tightenings: ReadonlyMap<TighteningId, TighteningFacts>
  loosenings: ReadonlyMap<LooseningId, LooseningFacts>
  /** Drawings of patterns, oldest first. */
  layouts: readonly LayoutFacts[]
  measures: ReadonlyMap<MeasureId, MeasureFacts>
  faults: ReadonlyMap<FaultId, FaultFacts>
  differences: ReadonlyMap<DifferenceId, DifferenceFacts>
  leftOut: ReadonlyMap<LeftOutId, LeftOutFacts>
  checks: ReadonlyMap<CheckId, CheckFacts>
  verdicts: ReadonlyMap<PieceId, VerdictFacts>
  bonds: readonly BondFacts[]
  /** New pieces that are to be compared with the old, by the new one. */
  comparisons: ReadonlyMap<PieceId, ComparisonFacts>
  triggers: ReadonlyMap<TriggerId, TriggerFacts>
  findings: ReadonlyMap<FindingId, FindingFacts>
  orders: ReadonlyMap<OrderId, OrderFacts>
  partNotes: ReadonlyMap<PieceId, PartNotes>
  outings: ReadonlyMap<OutingId, OutingFacts>
  consumables: ReadonlyMap<ConsumableId, ConsumableFacts>
  /** What was seen again, by step. */
  secondLooks: ReadonlyMap<number, readonly SecondLookFacts[]>
  /** In the folded record the time of the last entry; who asks the plan at another time says so. */
  clock: Clock
  /** Gates and things owed that were overridden, with the reason given. */
  overrides: ReadonlyMap<DecisionTarget, string>
  /** The codes of the reasons that stood when an override was given: it passes these over, and no later ones. */
  passedOver: ReadonlyMap<DecisionTarget, ReadonlySet<string>>
  /** What lay in each container and was taken out of it since, last taken out last. */
  takenFrom: ReadonlyMap<number, ReadonlyMap<PieceId, TakenOut>>
  /** How many of a lost piece were accepted as lost, by a decision of its own. */
  lostAccepted: ReadonlyMap<PieceId, number>
  /** Single-use pieces that have been fitted and taken off once: they do not go back. */
  used: ReadonlySet<PieceId>
  /** Whether the first start is cleared and nothing was touched since. */
  cleared: boolean
  started: boolean
  closed: boolean
}
