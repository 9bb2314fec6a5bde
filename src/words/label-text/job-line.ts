import type { State } from '../../journal/state.ts'
import { oneLine } from './one-line.ts'

/** Number and name of the job as they stand on everything printed: `017 blue twin`. */
export function jobLine({ job }: State): string {
  return oneLine(`${String(job.no).padStart(3, '0')} ${job.name}`)
}
