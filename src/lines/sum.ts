import type { Amount } from '../trade/convert/read-amount.ts'
import type { Conversion } from '../trade/convert/read-conversion.ts'
import type { Thread } from '../trade/thread.ts'
import type { FastenerClass } from '../trade/torque/fastener-class.ts'
import type { FrictionBy } from '../trade/torque/friction.ts'
import type { FrictionRange } from '../trade/torque/preload.ts'

/** A computation that is asked for: what was typed, understood. It writes nothing. */
export type Sum = { sum: 'convert'; conversion: Conversion } | SettingSum | PreloadSum

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
