import type { Entry } from '../entry.ts'
import type { State } from '../state.ts'

/** What is in hand: the strip step, the build step and the container in which work goes on. */
export type InHand = Pick<State, 'strip' | 'build' | 'hand'>

/**
 * Where work goes on once entries of a copy stand behind a record: where it was here, for the next bolt comes off at this
 * bench. What the copy ended or made void is in hand no more.
 * @param before what followed from the record
 * @param after what follows from it with what was taken over
 */
export function whereWorkGoesOn(before: State, after: State, fits: readonly Entry[]): InHand {
  const { strip, build, hand } = before
  const isEnded = fits.some((entry) => entry.type === 'strip-ended' && entry.step === strip)
  const isOpen = strip !== null && !isEnded && after.steps.get(strip)?.built === 'open'
  const isUnderWay = build !== null && after.steps.get(build)?.built === 'underway'
  const isThere = hand !== null && after.containers.get(hand)?.voided === null
  return {
    strip: isOpen ? strip : null,
    build: isUnderWay ? build : after.build,
    hand: isThere ? hand : null,
  }
}
