import { join } from 'node:path'
import { JOURNAL_NAME } from '../../storage/journal-file.ts'
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
    const isShared = (no: number | null) => no !== null && all.filter((job) => job.no === no).length > 1
    const text = shown.flatMap(({ path, no, name, machine, archived, phase, problem }) => [
      `${path === chosen ? '*' : ' '} ${String(no ?? '-').padStart(3)}  ${name}${machine === '' ? '' : `, ${machine}`}: ${archived ? 'archived' : (phase ?? 'not readable')}`,
      ...(isShared(no) ? [`        in ${path}: another job has this number on its labels too`] : []),
      ...(problem
        ? [`        ${troubleText(troubleOfProblem(problem, join(path, JOURNAL_NAME))).what}`]
        : []),
    ])
    const hidden = all.length - shown.length
    if (hidden > 0) text.push(`${hidden} archived: jobs --all`)
    if (all.length === 0) text.push('There is no job yet: new job NAME, or demo')
    return { ok: true, text, answer: { home: desk.shelf.home, chosen, jobs: shown } }
  } catch (error) {
    return troubleOf(error, desk.shelf.home)
  }
}
