import type { State } from '../journal/state.ts'
import type { WorkedOut } from '../session/work-out.ts'
import { convertText } from './sums/convert-text.ts'
import { coolantText } from './sums/coolant-text.ts'
import { freezingText, glycolText } from './sums/freezing-text.ts'
import { measuresText } from './sums/measures-text.ts'
import { orderText } from './sums/order-text.ts'
import { preloadText } from './sums/preload-text.ts'
import { settingText } from './sums/setting-text.ts'
import { shimsText } from './sums/shims-text.ts'
import { stretchText } from './sums/stretch-text.ts'
import { timingText } from './sums/timing-text.ts'

/** What a sum came to, line by line; the first line says the result, and is shown while the sum is typed. */
export function sumText(state: State, worked: WorkedOut): string[] {
  switch (worked.sum) {
    case 'convert':
      return convertText(worked)
    case 'setting':
      return settingText(worked)
    case 'preload':
      return preloadText(worked)
    case 'coolant':
      return coolantText(worked)
    case 'freezing-point':
      return freezingText(worked)
    case 'glycol-for':
      return glycolText(worked)
    case 'timing':
      return timingText(worked)
    case 'measures':
      return measuresText(worked)
    case 'stretch':
      return stretchText(worked)
    case 'order':
      return orderText(state, worked)
    case 'shims':
      return shimsText(worked)
    default:
      return worked satisfies never
  }
}
