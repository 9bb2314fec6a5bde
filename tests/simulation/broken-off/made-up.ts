import { chanceOf } from '../../support/damage/chance.ts'
import type { Machine } from '../machines/machine.ts'
import { makeMachine } from '../machines/make-machine.ts'
import { SHAPES, type Shape } from '../machines/shapes.ts'

/** A machine of a small shape, for a job of seconds: the same seed, the same machine. */
export function madeUp(seed: number): Machine {
  const small = SHAPES.filter(({ fasteners }) => fasteners <= MOST)
  return makeMachine(small[chanceOf(seed).whole(0, small.length - 1)] as Shape, seed)
}

const MOST = 120
