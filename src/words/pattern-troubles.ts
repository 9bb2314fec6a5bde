import type { State } from '../journal/state.ts'
import type { PatternFault } from '../plan/pattern.ts'
import { say } from './cures.ts'
import { joined } from './grammar.ts'
import { agree, pieceName, positionName } from './pieces.ts'
import { type Told, told } from './told.ts'

/** Why a piece has no positions among others. */
export function patternTrouble(state: State, fault: PatternFault): Told {
  switch (fault.code) {
    case 'pattern-not-of':
      return told(
        `${pieceName(state, fault.piece)} ${agree(state, fault.piece, 'has', 'have')} no place among others of its kind`,
        ONLY_SETS,
      )
    case 'pattern-single':
      return told(
        `${pieceName(state, fault.piece)} is one piece alone: there is nothing to tell it from`,
        ONLY_SETS,
      )
    case 'pattern-positions-unknown':
      return told(
        `nobody wrote down where these belong: ${joined(fault.pieces.map((id) => pieceName(state, id)))}`,
        `positions are written as they come off, as in ${say('off 5 M6x25 bolts @1..3,5,6')}`,
      )
    case 'pattern-position-shared':
      return told(
        `${positionName(fault.position)} is written down for two: ${joined(fault.pieces.map((id) => pieceName(state, id)))}`,
        `give one of them another name, as in ${say(`rename ${fault.pieces.at(-1)} to NAME`)}`,
      )
    default:
      return fault satisfies never
  }
}

const ONLY_SETS = 'positions are for matched sets and for fasteners that look alike'
