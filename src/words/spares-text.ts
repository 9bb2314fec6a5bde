import type { State } from '../journal/state.ts'
import type { KnownSpare } from '../session/known-spares.ts'
import { say } from './cures.ts'
import { joined, sentence } from './grammar.ts'
import { countedPiece, pieceName } from './pieces.ts'

/** What lies there at the end and may, and what another number of it means; nothing where there is none. */
export function sparesText(state: State, spares: readonly KnownSpare[]): string[] {
  const [first] = spares
  if (!first) return []
  const named = spares.map(({ piece, count }) => countedPiece(state, piece, count))
  return [
    sentence(`known to be spare: ${joined(named)}`),
    sentence(
      `count them: one more belongs on the machine, ${say(`found ${pieceName(state, first.piece)}`)} shows where; one fewer is in it somewhere, or lost`,
    ),
  ]
}
