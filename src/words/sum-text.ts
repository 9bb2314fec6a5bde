import type { State } from '../journal/state.ts'
import type { WorkedOut } from '../session/work-out.ts'
import { convertText } from './sums/convert-text.ts'

/** What a sum came to, line by line; the first line says the result, and is shown while the sum is typed. */
export function sumText(_state: State, worked: WorkedOut): string[] {
  switch (worked.sum) {
    case 'convert':
      return convertText(worked)
    default:
      return worked.sum satisfies never
  }
}
