import { say } from '../cures.ts'
import { joined } from '../grammar.ts'
import { patternTrouble } from '../pattern-troubles.ts'
import { pieceName, positionName } from '../pieces.ts'
import { told } from '../told.ts'
import type { Tellers } from './tellers.ts'

/** What concerns where positions lie on the machine. */
export const positionRefusals: Tellers<
  'no-pattern' | 'layout-wrong' | 'not-laid-out' | 'rule-not-for-shape'
> = {
  'no-pattern': (state, { fault }) => patternTrouble(state, fault),
  'layout-wrong': (_, { missing, unknown, twice, together }) =>
    told('a drawing shows each position once, each in a place of its own', 'draw it again', [
      ...(missing.length > 0 ? [`missing: ${positions(missing)}`] : []),
      ...(unknown.length > 0 ? [`not there: ${positions(unknown)}`] : []),
      ...(twice.length > 0 ? [`twice: ${positions(twice)}`] : []),
      ...(together.length > 0 ? [`on top of another: ${positions(together)}`] : []),
    ]),
  'not-laid-out': (state, { piece }) =>
    told(
      `how the positions of ${pieceName(state, piece)} lie on the machine is not drawn yet`,
      `draw them: ${say(`layout ${piece}: 2x4`)}, ${say(`layout ${piece}: circle`)} or row by row, ${say(`layout ${piece}: 1 2 / . 3`)}`,
    ),
  'rule-not-for-shape': (_, { rule, shape }) =>
    told(
      `the rule ${rule} is not for ${SHAPES[shape]}`,
      `take ${joined(
        RULES[shape].map((each) => say(`tighten PIECE: ... by ${each}`)),
        'or',
      )}; or type the manual's order: ${say('tighten PIECE: ... order 3,1,2')}`,
    ),
}

function positions(names: readonly string[]): string {
  return names.map(positionName).join(', ')
}

const SHAPES = { row: 'a row', grid: 'a grid', circle: 'a circle', free: 'a free outline' }
const RULES = {
  row: ['row'],
  grid: ['crosswise', 'spiral', 'clockwise'],
  circle: ['star', 'clockwise'],
  free: ['outwards', 'clockwise', 'star'],
}
