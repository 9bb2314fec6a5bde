import { plainText } from '../../label/plain-text.ts'
import { copiesOf, type JobSummary } from '../../session/jobs.ts'
import { copiesText } from '../../words/merging/copies-text.ts'
import { troubleText } from '../../words/storage-troubles.ts'
import { troubleOfProblem } from '../../words/trouble-of.ts'
import { type Choice, choicesOf, goTo, type Page, rowsOf } from '../page.ts'
import { cut, type Line, line, strong } from '../text/line.ts'
import { bulleted, groups, headed, indented, numbered, withWords } from './rows.ts'
import type { Hall } from './scene.ts'

/** The jobs of this home by number; for who comes first, what this is, and one question. */
export function jobsPage(hall: Hall): Page {
  return hall.jobs.length === 0 ? firstPage(hall) : listPage(hall)
}

const NEW_JOB = goTo('a new job', { at: 'new-job', name: null })
const DEMO: Choice = { says: 'a demo job, to look round', act: { do: 'demo' } }
const PRACTICE: Choice = { says: 'a practice job, five minutes', act: { do: 'practice' } }

/** One row each, in the smallest window too. */
const WHAT_THIS_IS: readonly string[] = [
  'A machine comes apart: every piece and its bag are kept here.',
  'It goes back: what goes where, and what is still missing.',
  'Each line is on the disk at once; no network is needed.',
]

const FROM_BACKUP = 'A back-up becomes a job again with "putback restore FILE" in a shell'

function firstPage({ width, home }: Hall): Page {
  return {
    title: line(strong('WELCOME')),
    top: [],
    rows: rowsOf(
      groups(
        WHAT_THIS_IS.flatMap((text) => indented(text, width)),
        headed('WHAT IS IT TO BE?', [
          ...numbered(1, NEW_JOB.says, width),
          ...numbered(2, DEMO.says, width),
          ...numbered(3, line(strong(PRACTICE.says), ': never used it? Begin here'), width),
        ]),
        [
          ...indented(`Jobs are kept in ${plainText(home)}`, width),
          ...indented(line(...withWords(FROM_BACKUP)), width),
        ],
      ),
    ),
    enter: NEW_JOB,
    choice: choicesOf(
      new Map([
        [1, NEW_JOB],
        [2, DEMO],
        [3, PRACTICE],
      ]),
    ),
    large: null,
  }
}

function listPage(hall: Hall): Page {
  const { jobs, width } = hall
  const open = [...jobs].sort((a, b) => Number(a.archived) - Number(b.archived))
  const choices = new Map<number, Choice>()
  for (const [index, job] of open.entries()) choices.set(index + 1, openJob(job))
  const most = choices.size
  choices.set(most + 1, NEW_JOB)
  choices.set(most + 2, DEMO)
  choices.set(most + 3, PRACTICE)
  const rows = open.flatMap((job, index) => jobRows(job, index + 1, { jobs, width }))
  return {
    title: line(strong('JOBS'), `  ${jobs.length}`),
    top: [],
    rows: rowsOf(
      groups(
        rows,
        headed(
          'OR',
          [NEW_JOB, DEMO, PRACTICE].flatMap(({ says }, index) => numbered(most + 1 + index, says, width)),
        ),
      ),
    ),
    enter: 'session' in hall ? goTo('back to the job that is open', { at: 'now' }) : null,
    choice: choicesOf(choices),
    large: null,
  }
}

function openJob(job: JobSummary): Choice {
  return { says: `open ${plainText(job.name)}`, act: { do: 'open-job', path: job.path } }
}

function jobRows(job: JobSummary, no: number, { jobs, width }: Pick<Hall, 'jobs' | 'width'>): Line[] {
  const number = job.no === null ? '---' : String(job.no).padStart(3, '0')
  const state = job.archived ? 'put away' : (job.phase ?? '')
  const name = plainText(job.name === '' ? job.folder : job.name)
  const row = line(
    strong(String(no).padStart(3)),
    '  ',
    number,
    '  ',
    strong(name),
    `  ${state}  `,
    plainText(job.machine),
  )
  const about = [
    ...copiesText(copiesOf(job, jobs)),
    ...(job.problem ? [troubleText(troubleOfProblem(job.problem, `${job.folder}/journal.log`)).what] : []),
  ]
  return [cut(row, width), ...about.flatMap((text) => bulleted(plainText(text), width))]
}
