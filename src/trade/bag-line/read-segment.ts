import type { UnitSystem } from '../quantity.ts'
import type { Outcome } from './outcome.ts'
import { readAidInWords, readEnds } from './read-ends.ts'
import { readFluid } from './read-fluid.ts'
import { readMinutes } from './read-minutes.ts'
import { readPiece } from './read-piece.ts'
import { readPrefixed } from './read-prefixed.ts'

/**
 * Reads one item of a line, as it stands between semicolons.
 * @param segment not empty, single spaces
 */
export function readSegment(segment: string, units: UnitSystem): Outcome {
  const text = segment.replace(/<?-{0,2}>|=>|→|⇒|➔|➜/gu, '>')
  return (
    readMinutes(text) ??
    readPrefixed(text, units) ??
    readEnds(text) ??
    readAidInWords(text) ??
    readFluid(text, units) ??
    readPiece(text)
  )
}
