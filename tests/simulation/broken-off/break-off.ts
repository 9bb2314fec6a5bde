import { chanceOf } from '../../support/damage/chance.ts'
import { makeMachine } from '../machines/make-machine.ts'
import { SHAPES, type Shape } from '../machines/shapes.ts'
import { BrokenJob } from './broken-job.ts'
import { addTo, type BreakOffReport, emptyReport } from './report.ts'

/** In one job. */
const MOST_EACH = 50
const LEAST_EACH = 20

/**
 * Whole jobs, each broken off again and again at places by chance, until there were so many interruptions. The same seed,
 * the same jobs. `shapes`: the machines, all of them unless told.
 */
export function breakOff(
  seed: number,
  interruptions: number,
  shapes: readonly Shape[] = SHAPES,
): BreakOffReport {
  const report = emptyReport()
  const chance = chanceOf(seed)
  while (report.interruptions < interruptions) {
    const shape = shapes[chance.whole(0, shapes.length - 1)] as Shape
    const each = Math.min(chance.whole(LEAST_EACH, MOST_EACH), interruptions - report.interruptions)
    const own = chance.whole(1, 1e9)
    addTo(report, new BrokenJob(makeMachine(shape, own), { seed: own, interruptions: each }).run())
  }
  return report
}
