import type { LayoutFault } from '../trade/position-layout/read-layout.ts'
import { say } from './cures.ts'
import { positionName } from './pieces.ts'

/** Why an answer is no drawing of positions, with what would be one. */
export function layoutFaultText(fault: LayoutFault): string {
  switch (fault.code) {
    case 'layout-form':
      return `No drawing is written like that. As here: ${say(fault.nearest)}, ${say('circle')}, or row by row ${say('1 2 / . 3')}.`
    case 'layout-positions':
      return `Each position once: ${[
        ...named('missing', fault.missing),
        ...named('twice', fault.twice),
        ...named('not there', fault.unknown),
      ].join('; ')}.`
    case 'layout-too-small':
      return `${fault.rows} rows of ${fault.columns} are ${fault.places} places for ${fault.positions} positions.`
    case 'layout-too-wide':
      return `At most ${fault.most} rows and ${fault.most} columns can be drawn: this has ${fault.rows} of ${fault.columns}.`
    case 'layout-too-many':
      return `At most ${fault.most} positions can be drawn: these are ${fault.positions}.`
    default:
      return fault satisfies never
  }
}

/** The first few: a list of two hundred says no more. */
function named(what: string, positions: readonly string[]): string[] {
  if (positions.length === 0) return []
  const more = positions.length > MOST_NAMED ? `, and ${positions.length - MOST_NAMED} more` : ''
  return [`${what} ${positions.slice(0, MOST_NAMED).map(positionName).join(', ')}${more}`]
}

const MOST_NAMED = 6
