import { counted, joined } from '../../words/grammar.ts'
import type { AsBuilt } from '../as-built.ts'
import { type Line, line } from './line.ts'
import { history, type Telling } from './telling.ts'

/** What the record is of, how far the job is, and how the record is tied to the journal. */
export function jobText(telling: Telling, facts: AsBuilt, zone: string): Line[] {
  const { job, phase, last, undone, people, minutes, cutBy } = facts
  return [
    line(`Job ${job.no}: ${job.name}`),
    line(`Machine: ${job.machine || 'not said'}`),
    line(`State: ${phase}${job.archived ? ', in the archive' : ''}`),
    line(`People: ${joined(people) || 'no name was given'}`),
    line(`Time noted: ${minutes > 0 ? `${minutes} min` : 'none'}`),
    line(`Journal: ${last ? `to entry ${last.n}, ${telling.when(last.at)}, id ${last.id}` : 'no entry'}`),
    line(undone === 0 ? 'Undone: no entry' : `Undone: ${counted(undone, 'entry', 'entries')}, left out here`),
    line(`Times: local, ${zone}. A number before a time is that of the entry in the journal.`),
    ...(cutBy === null ? [] : [line(`${CUT[cutBy]}: what came later is not in this record.`)]),
    line(''),
    ...facts.course.map((entry) => history(telling, entry)),
  ]
}

const CUT: Record<NonNullable<AsBuilt['cutBy']>, string> = {
  damage: 'The journal is damaged behind that entry',
  newer: 'A newer putback wrote the entry behind that one, which this program cannot read',
}
