import { turnsUntilMarksMeet } from './chain-marks.ts'
import { type Misplaced, misplacedMark } from './misplaced-mark.ts'
import type { MisplacedAsTyped } from './read-misplaced.ts'
import { type Stage, type ToothAngles, toothAngles } from './teeth.ts'

/** What is asked about the teeth of a timing drive. */
export interface TimingQuestion {
  stages: readonly Stage[]
  /** How a mark is off, where that is asked. */
  off: MisplacedAsTyped | null
  /** Pins of the chain or teeth of the belt, where it is asked when its marks come round. */
  pins: number | null
}

export interface TimingWorkedOut {
  angles: ToothAngles
  misplaced: Misplaced | null
  /** Turns of the crank until marked links meet the marks of both sprockets again. */
  turnsUntilMarksMeet: number | null
}

/** Answers a question about a timing drive. A drive that is none, or has two stages, has no turns until its marks meet. */
export function workOutTiming(question: TimingQuestion): TimingWorkedOut {
  const angles = toothAngles(question.stages)
  const isDrive = angles.code === 'tooth-angles'
  const [stage] = question.stages
  return {
    angles,
    misplaced: isDrive && question.off ? misplacedMark(angles.stages, question.off.measured) : null,
    turnsUntilMarksMeet:
      isDrive && stage && question.stages.length === 1 && question.pins !== null
        ? turnsUntilMarksMeet(stage, question.pins)
        : null,
  }
}
