import type { WorkedOut } from '../../session/work-out.ts'
import { measureRows } from '../measurements/measure-text.ts'
import { NOT_A_SPECIFICATION } from './figures.ts'

/** What was measured, the latest of each. */
export function measuresText({ words, worked }: Extract<WorkedOut, { sum: 'measures' }>): string[] {
  if (worked.length > 0) return [...worked.flatMap(measureRows), NOT_A_SPECIFICATION]
  return [words === null ? 'Nothing was measured yet.' : `Nothing was measured that goes by '${words}'.`]
}
