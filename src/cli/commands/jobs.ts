import { join } from 'node:path'
import { copiesOf, type JobSummary } from '../../session/jobs.ts'
import { JOURNAL_NAME } from '../../storage/journal/journal-file.ts'
import { copiesText } from '../../words/merging/copies-text.ts'
import { troubleText } from '../../words/storage-troubles.ts'
import { troubleOfProblem } from '../../words/trouble-of.ts'
import type { Options } from '../arguments.ts'
import type { Desk } from '../desk.ts'
import type { Result } from '../result.ts'
import { troubleOf } from '../trouble.ts'

/** `jobs`: the jobs of the home, the chosen one marked; archived ones only with --all. */
export function jobs(desk: Desk, _args: readonly string[], options: Options): Result {
  try {
    const all = desk.shelf.list()
    const shown = all.filter(({ archived }) => options.all || !archived)
    const chosen = desk.shelf.chosen()
    const text = shown.flatMap((job) => rowsOf(job, all, chosen))
    const hidden = all.length - shown.length
    if (hidden > 0) text.push(`${hidden} archived: jobs --all`)
    if (all.length === 0) text.push('There is no job yet: new job NAME, or demo')
    return { ok: true, text, answer: { home: desk.shelf.home, chosen, jobs: shown } }
  } catch (error) {
    return troubleOf(error, desk.shelf.home)
  }
}

/** A job, where it lies if the number does not tell, and what is wrong with it. */
function rowsOf(job: JobSummary, all: readonly JobSummary[], chosen: string | null): string[] {
  const { path, no, name, machine, archived, phase, problem } = job
  const numbered = all.filter((each) => no !== null && each.no === no)
  const copies = copiesOf(job, all)
  const isShared = numbered.length > copies.length + 1
  const about = [
    ...(copies.length > 0 || isShared ? [`in ${path}`] : []),
    ...(isShared ? ['another job has this number on its labels too'] : []),
    ...copiesText(copies),
    ...(problem ? [troubleText(troubleOfProblem(problem, join(path, JOURNAL_NAME))).what] : []),
  ]
  return [
    `${path === chosen ? '*' : ' '} ${String(no ?? '-').padStart(3)}  ${name}${machine === '' ? '' : `, ${machine}`}: ${archived ? 'archived' : (phase ?? 'not readable')}`,
    ...about.map((line) => `        ${line}`),
  ]
}
