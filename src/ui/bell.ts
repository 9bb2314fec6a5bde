import type { Sign } from './signs.ts'

/** What is heard, always doubled on the screen: how often the bell rings. */
export type Rings = 1 | 2 | 3

/** Three patterns and no more: one is done, two say look, three say refused. */
export const RINGS = { done: 1, look: 2, refused: 3 } as const satisfies Record<string, Rings>

/** What a sign sounds like. What stands out on the screen stands out by ear. */
export function ringsOf({ tone }: Sign): Rings {
  switch (tone) {
    case 'stop':
      return RINGS.refused
    case 'good':
    case 'active':
      return RINGS.done
    default:
      return RINGS.look
  }
}
