import type { Where } from '../mistakes/mistake.ts'
import type { Gate } from './switches.ts'

/** The gates that stand one behind the other against one mistake, made at one thing of the small machine. */
export interface Wall {
  mistake: string
  /** The name of the thing that it is made at. */
  at: string
  /** In the order in which it runs into them, and where it is stopped by each, those before it being off. */
  gates: readonly (readonly [gate: Gate, stops: Where])[]
}

export const WALLS: readonly Wall[] = [
  {
    mistake: 'fastener left out',
    at: 'front fan screws',
    gates: [
      ['home, to close a step', 'step closed'],
      ['home, at the last gate', 'last gate'],
    ],
  },
  {
    mistake: 'fastener left out',
    at: 'left chain bolts',
    gates: [
      ['home, to turn a bolt', 'at once'],
      ['home, to close a step', 'step closed'],
      ['home, at the last gate', 'last gate'],
    ],
  },
  {
    mistake: 'hose end not put back',
    at: 'upper coil hose',
    gates: [
      ['home, to close a step', 'step closed'],
      ['home, at the last look', 'last look'],
      ['home, at the last gate', 'last gate'],
    ],
  },
]
