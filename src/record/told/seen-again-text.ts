import { secondLineName } from '../../words/second-look-text.ts'
import type { SeenAgain } from '../facts/seen-again.ts'
import { type Line, line } from './line.ts'
import { dated, type Telling } from './telling.ts'

/** What was seen a second time, by whom, and what was not. */
export function seenAgainText(telling: Telling, { looks, notSeen }: SeenAgain): Line[] {
  const { state } = telling
  return [
    ...looks.map(({ entry, stands }) =>
      dated(
        telling,
        entry,
        `${secondLineName(state, entry.line)}: ${entry.says}${stands ? '' : ' (no longer counted)'}`,
        4,
      ),
    ),
    ...notSeen.map((each) => line(`${secondLineName(state, each)}: not seen again`, 4)),
  ]
}
