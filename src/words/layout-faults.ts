import type { LayoutFault } from '../trade/position-layout/read-layout.ts'
import { say } from './cures.ts'
import { counted } from './grammar.ts'
import { positionName } from './pieces.ts'
import { type Told, told } from './told.ts'

/** Why what was typed is no layout of these positions. `before`: the words that stand in front of a layout there. */
export function layoutFaultText(fault: LayoutFault, before: string): Told {
  const form = (layout: string) => say(`${before} ${layout}`.trim())
  switch (fault.code) {
    case 'layout-form':
      return told(
        fault.typed === '' ? 'no layout was written' : `'${fault.typed}' is no layout`,
        `perhaps ${form(fault.nearest)}; rows are written as in ${form('1 2 3 / 6 . 4')}`,
      )
    case 'layout-positions':
      return told(
        'the layout does not name every position once',
        'write each position once, and "." where there is none',
        namedWrongly(fault),
      )
    case 'layout-too-small':
      return told(
        `${counted(fault.rows, 'row')} of ${fault.columns} ${fault.rows === 1 ? 'is' : 'are'} ${counted(fault.places, 'place')} for ${fault.positions} positions`,
        'the first number is that of the rows: write more of them, or longer ones',
      )
    case 'layout-too-wide':
      return told(
        `${fault.rows} x ${fault.columns} is too large`,
        `at most ${fault.most} rows of ${fault.most}`,
      )
    case 'layout-too-many':
      return told(`${fault.positions} positions are more than ${fault.most}`, 'lay out fewer at once')
    default:
      return fault satisfies never
  }
}

/** What of a layout is missing, stands twice, or is not there. */
export function namedWrongly({
  missing,
  twice,
  unknown,
}: Pick<Extract<LayoutFault, { code: 'layout-positions' }>, 'missing' | 'twice' | 'unknown'>): string[] {
  return [...named('missing', missing), ...named('more than once', twice), ...named('not known', unknown)]
}

/** The first few: a list of two hundred says no more. */
function named(what: string, positions: readonly string[]): string[] {
  if (positions.length === 0) return []
  const more = positions.length > MOST_NAMED ? `, and ${positions.length - MOST_NAMED} more` : ''
  return [`${what}: ${positions.slice(0, MOST_NAMED).map(positionName).join(', ')}${more}`]
}

const MOST_NAMED = 6
