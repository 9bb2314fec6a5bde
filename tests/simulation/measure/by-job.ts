import type { MistakeClass } from '../mistakes/classes.ts'
import type { Fate } from '../mistakes/mistake.ts'
import { isMisplacing, isOmitting } from './goal.ts'
import type { JobCount, Tally } from './tally.ts'

/** Adds one job: whether such mistakes were made in it, and whether any of them passed. */
export function addByJob(
  { omissions, places }: Tally['byJob'],
  classes: readonly MistakeClass[],
  fates: readonly Fate[],
): void {
  const made = fates.filter(({ came }) => came !== 'by chance')
  const of = (isOne: (kind: MistakeClass) => boolean) => {
    const names = new Set(classes.filter(isOne).map(({ name }) => name))
    return made.filter(({ mistake }) => names.has(mistake))
  }
  addJob(omissions, of(isOmitting), (fate) => fate.came !== 'stopped')
  addJob(places, of(isMisplacing), (fate) => fate.came !== 'stopped' || fate.where !== 'at once')
}

function addJob(count: JobCount, fates: readonly Fate[], isPassed: (fate: Fate) => boolean): void {
  if (fates.length > 0) count.jobs += 1
  if (fates.some(isPassed)) count.passed += 1
}
