import type { PieceId } from '../ledger/piece.ts'
import type { Amount } from '../trade/convert/read-amount.ts'
import type { Conversion } from '../trade/convert/read-conversion.ts'
import type { Glycol } from '../trade/coolant/freezing-point.ts'
import type { CoolantQuestion } from '../trade/coolant/read-coolant.ts'
import type { Temperature } from '../trade/coolant/temperature.ts'
import type { StretchQuestion } from '../trade/measuring/reading/read-stretch.ts'
import type { PositionLayout } from '../trade/position-layout/position-layout.ts'
import type { Thread } from '../trade/thread.ts'
import type { OrderRule } from '../trade/tightening-order/order.ts'
import type { TimingQuestion } from '../trade/timing/work-out.ts'
import type { FastenerClass } from '../trade/torque/fastener-class.ts'
import type { FrictionBy } from '../trade/torque/friction.ts'
import type { FrictionRange } from '../trade/torque/preload.ts'
import type { ShimSum } from './shim-sum.ts'

/** A computation that is asked for: what was typed, understood. It writes nothing. */
export type Sum =
  | { sum: 'convert'; conversion: Conversion }
  | SettingSum
  | PreloadSum
  | CoolantSum
  | FreezingPointSum
  | GlycolSum
  | TimingSum
  | MeasuresSum
  | StretchSum
  | OrderSum
  | ShimSum

/** What to set a torque wrench to. */
export interface SettingSum {
  sum: 'setting'
  torque: Amount
  /** `angleDegrees`: between adapter and wrench, 0 where nothing was said. */
  adapter?: { handle: Amount; length: Amount; angleDegrees: number }
  /** The scale of the wrench. */
  range?: { least: Amount; most: Amount }
}

/** What a torque clamps with. */
export interface PreloadSum {
  sum: 'preload'
  thread: Thread
  fastenerClass?: FastenerClass
  torque: Amount
  friction: FrictionRange
  frictionBy: FrictionBy
}

/** How much coolant to drain and refill, or how to mix it. */
export interface CoolantSum {
  sum: 'coolant'
  question: CoolantQuestion
}

/** Where a mixture freezes. */
export interface FreezingPointSum {
  sum: 'freezing-point'
  glycol: Glycol
  /** By volume. */
  percent: number
}

/** How strong a mixture must be for a frost. */
export interface GlycolSum {
  sum: 'glycol-for'
  glycol: Glycol
  lowest: Temperature
}

/** What a tooth of a timing drive is worth, and how a mark that is off goes back. */
export interface TimingSum {
  sum: 'timing'
  question: TimingQuestion
}

/** The order of tightening that a rule gives, for a pattern of the record or for places that are only drawn. */
export interface OrderSum {
  sum: 'order'
  of: { piece: PieceId } | { layout: PositionLayout }
  /** The usual one of the shape where none was said. */
  rule?: OrderRule
}

/** What was measured and what it comes to; all of it where no words are given. */
export interface MeasuresSum {
  sum: 'measures'
  words: string | null
}

/** How much longer a bolt gets under a force. */
export interface StretchSum {
  sum: 'stretch'
  question: StretchQuestion
}
