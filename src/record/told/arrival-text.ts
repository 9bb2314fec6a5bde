import { faultName, stepName } from '../../words/names.ts'
import { pieceName } from '../../words/pieces.ts'
import type { Arrival } from '../facts/arrival.ts'
import { type Line, line } from './line.ts'
import { dated, history, numbered, orNone, type Telling } from './telling.ts'

/** What was missing or broken as found, and what became of the faults. */
export function arrivalText(telling: Telling, { missing, broken, faults }: Arrival): Line[] {
  const { state } = telling
  const found = [
    ...missing.map(({ piece, count, should, entry }) =>
      dated(
        telling,
        entry,
        `missing as found: ${count} of ${should}, ${pieceName(state, piece)}, ${stepName(state, entry.step)}`,
      ),
    ),
    ...broken.map(({ piece, count, kind, entry }) =>
      dated(
        telling,
        entry,
        `${kind} as found: ${numbered(state, piece, count)}, to scrap, ${stepName(state, entry.step)}`,
      ),
    ),
  ]
  const settled = faults.flatMap(({ fault, settled }) => [
    line(`fault ${faultName(state, fault.id)}${settled === null ? ': not put right' : ', put right:'}`, 2),
    ...(settled === null ? [] : [history(telling, settled, 4)]),
  ])
  return [...orNone(found, 'Nothing was recorded as missing or broken.'), ...settled]
}
