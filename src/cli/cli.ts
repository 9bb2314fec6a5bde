import { dirname } from 'node:path'
import { plainText } from '../label/plain-text.ts'
import { withoutSteering } from '../label/without-steering.ts'
import { jobsHome } from '../storage/home.ts'
import { troubleText } from '../words/storage-troubles.ts'
import { troubleOfRecord } from '../words/trouble-of.ts'
import type { Arguments } from './arguments.ts'
import { demo } from './commands/demo.ts'
import { practice } from './commands/practice.ts'
import { run } from './commands/run.ts'
import { Desk, jobAtPath } from './desk.ts'
import { runErrand } from './errands.ts'
import { EXIT, type ExitCode } from './exit-codes.ts'
import { DiskShelf } from './job-shelf.ts'
import { type Surface, show } from './output.ts'
import { isPending, type Pending } from './pending.ts'
import { perform } from './perform.ts'
import type { Result } from './result.ts'
import { troubleOf } from './trouble.ts'

/** What the command line stands in: its words go out here, its folders are looked up here. */
export interface Place extends Surface {
  env: { PUTBACK_HOME?: string | undefined }
  cwd: string
  /** Whether colours may be used on standard output. */
  colour: boolean
  now?: (() => Date) | undefined
  /** Whether how far an errand is may be said on standard error. */
  progress?: boolean | undefined
}

/**
 * Carries out one command of the command line, and says what came of it. Answers the exit code: at once, or a promise
 * of it where an errand takes its time.
 */
export function cli(asked: Arguments, place: Place): ExitCode | Promise<ExitCode> {
  const desk = openDesk(asked, place)
  const finish = (result: Result): ExitCode => {
    show(result, place, { json: asked.options.json, warnings: warningsOf(desk) })
    return result.ok ? EXIT.done : result.exit
  }
  const done = carryOut(desk, asked, place)
  return done instanceof Promise ? done.then(finish) : finish(done)
}

/** The jobs of the home that is meant, with nothing opened yet. */
export function openDesk({ options }: Arguments, { env, cwd, colour, now }: Place): Desk {
  // A job named by its path brings its home along.
  const beside = options.job === undefined ? null : jobAtPath(options.job, cwd)
  const option = options.home ?? (beside === null ? undefined : dirname(beside))
  const home = jobsHome({ option, env, cwd }).path
  const by = plainText(options.by ?? '') || undefined
  const shelf = new DiskShelf(home, { by, now })
  return new Desk(shelf, { options, cwd, colour: colour && !options.noColour })
}

function carryOut(desk: Desk, { words, options }: Arguments, place: Place): Result | Promise<Result> {
  const [first = '', ...rest] = words
  const errand = (stdout: boolean) => (pending: Pending) =>
    runErrand(desk, pending, progressOf(place), { stdout })
  try {
    if (first === 'demo') return demo(desk, rest, options)
    if (first === 'practice') return practice(desk)
    if (first === 'doctor') return later(desk, place, ({ doctor }) => doctor(desk, rest))
    if (first === 'restore') return later(desk, place, ({ restore }, tell) => restore(desk, rest, tell))
    const all = /^backup all(?: to (.+))?$/i.exec(words.join(' '))
    if (all)
      return later(desk, place, ({ backUpEvery }, tell) =>
        backUpEvery(desk, all[1] ?? null, { now: place.now?.() ?? new Date(), tell }),
      )
    if (first === 'run') return run(desk, rest, options, errand(false))
    const result = perform(desk, words, options)
    return isPending(result) ? errand(true)(result) : result
  } catch (error) {
    return troubleOf(error, desk.shelf.home)
  }
}

/** What takes its time and needs no job. */
async function later(
  desk: Desk,
  place: Place,
  work: (
    errands: typeof import('./errands/run-errand.ts'),
    tell: (progress: string) => void,
  ) => Promise<Result>,
): Promise<Result> {
  const tell = progressOf(place)
  try {
    return await work(await import('./errands/run-errand.ts'), tell)
  } catch (error) {
    return troubleOf(error, desk.shelf.home)
  } finally {
    tell('')
  }
}

/** How far an errand is, on one line of a terminal that is written over. */
function progressOf(place: Place): (text: string) => void {
  if (!place.progress) return () => undefined
  return (text) => place.error(`\r\x1b[K${withoutSteering(text).slice(0, 79)}`)
}

/** What is wrong with the record that was read, and what was set aside from it. */
function warningsOf(desk: Desk): string[] {
  const { session } = desk.inHand ?? {}
  if (!session) return []
  const problem = troubleOfRecord(session)
  const aside = session.store.setAside.map((moved) => troubleText({ kind: 'set-aside', ...moved }))
  return [...aside, ...(problem ? [troubleText(problem)] : [])].map(({ what, cure }) => `${what} ${cure}`)
}
