import { told } from '../told.ts'
import type { Tellers } from './tellers.ts'

/** What concerns readings and their limits. */
export const measuringRefusals: Tellers<'measurement-wrong'> = {
  'measurement-wrong': (_, { why }) => told(WRONG[why].what, WRONG[why].cure),
}

const WRONG = {
  'no-reading': { what: 'a measurement has at least one reading', cure: 'type what was read' },
  value: { what: 'a reading, a limit or a distance is no size that can be measured', cure: 'type it again' },
  limits: {
    what: 'the lower limit is above the upper one',
    cure: 'look at the manual, and type the limits again',
  },
}
