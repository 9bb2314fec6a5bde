import type { JobShelf } from '../../session/jobs.ts'
import { type Answer, saying } from '../answer.ts'
import type { Sign } from '../signs.ts'

/** What is heard, always doubled on the screen: how often the bell rings. */
export type Rings = 1 | 2 | 3

/** The bell of the screens. It is silent in all jobs of the home where the user wants it so. */
export class Bell {
  readonly #shelf: Pick<JobShelf, 'hasSound' | 'setSound'>
  readonly #ring: (times: Rings) => void
  #isWanted: boolean

  constructor(shelf: Pick<JobShelf, 'hasSound' | 'setSound'>, ring: (times: Rings) => void) {
    this.#shelf = shelf
    this.#ring = ring
    this.#isWanted = shelf.hasSound()
  }

  /** Says to the ear what a sign says to the eye. */
  say(sign: Sign): void {
    if (this.#isWanted) this.#ring(ringsOf(sign))
  }

  /** From now on it rings, or no more; the other way round where nothing is asked for. Answers what is said to it. */
  turn(isWanted = !this.#isWanted): Answer {
    // It holds here also where the home cannot keep it.
    this.#isWanted = isWanted
    this.#shelf.setSound(isWanted)
    if (!isWanted) return saying('The bell is silent.', '"sound on" lets it ring again.')
    this.#ring(RINGS.done)
    return saying('The bell rings: one is done, two say look, three say refused.', '"sound off" silences it.')
  }
}

/** Three patterns and no more: one is done, two say look, three say refused. */
const RINGS = { done: 1, look: 2, refused: 3 } as const satisfies Record<string, Rings>

/** What a sign sounds like. What stands out on the screen stands out by ear. */
function ringsOf({ tone }: Sign): Rings {
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
