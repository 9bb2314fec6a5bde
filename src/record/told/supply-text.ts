import { liesText, pieceName } from '../../words/pieces.ts'
import type { Supply } from '../facts/supplies.ts'
import type { Line } from './line.ts'
import { dated, numbered, type Telling } from './telling.ts'

/** New pieces: what they replace, where they are now, and where the old ones went. */
export function supplyText(telling: Telling, { fresh, old, count, entry }: Supply): Line {
  const { state } = telling
  const what = `new: ${numbered(state, fresh, count)} (${fresh})`
  if (old === null) {
    return dated(telling, entry, `${what} for a home that was short; all ${fresh}: ${liesText(state, fresh)}`)
  }
  const stead = `in place of ${pieceName(state, old)} (${old})`
  return dated(
    telling,
    entry,
    `${what} ${stead}; the new: ${liesText(state, fresh)}; the old: ${liesText(state, old)}`,
  )
}
