import type { Torque } from '../trade/quantity.ts'

/** A computation that is asked for: what was typed, understood. It writes nothing. */
export type Sum = { sum: 'convert'; torque: Torque }
