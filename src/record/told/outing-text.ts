import { joined } from '../../words/grammar.ts'
import { countedPiece } from '../../words/pieces.ts'
import { outingName } from '../../words/waiting/names.ts'
import type { OutingRecord } from '../facts/outings.ts'
import { type Line, line } from './line.ts'
import { history, type Telling } from './telling.ts'

/** What went out: to whom, when, what came back, what was taken out there, and what is not back. */
export function outingText(telling: Telling, { outing, entries, away }: OutingRecord): Line[] {
  const { state } = telling
  const { id, tookOut, job } = outing
  const isAsked = tookOut === null && job === undefined && away.length === 0
  return [
    line(outingName(state, id), 2),
    ...entries.map((entry) => history(telling, entry, 4)),
    ...(away.length === 0
      ? []
      : [line(`not back: ${joined(away.map(({ piece, count }) => countedPiece(state, piece, count)))}`, 4)]),
    ...(isAsked ? [line('nobody said what was taken out there', 4)] : []),
  ]
}
