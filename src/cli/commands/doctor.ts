import type { DoctorAsk } from '../../lines/errand.ts'
import { say } from '../../words/cures.ts'
import type { Desk } from '../desk.ts'
import { runDoctor } from '../errands/doctor.ts'
import { resultOf } from '../pending.ts'
import type { Result } from '../result.ts'

/** `doctor [JOB] [mend | cut | from PATH]`: examines a job without opening it, for nothing may be changed by looking. */
export async function doctor(desk: Desk, args: readonly string[]): Promise<Result> {
  const { job, asked } = readAsked(args)
  const folder = job === '' ? desk.meant() : desk.find(job)
  if (typeof folder !== 'string') return folder
  const before = ['putback doctor', job].filter(Boolean).join(' ')
  const ask = (words: string) => say(`${before} ${words}`)
  return resultOf(await runDoctor(asked, { folder, home: desk.shelf.home, cwd: desk.cwd, ask }))
}

function readAsked(args: readonly string[]): { job: string; asked: DoctorAsk } {
  const from = args.findIndex((word) => word.toLowerCase() === 'from')
  if (from !== -1 && from < args.length - 1)
    return {
      job: args.slice(0, from).join(' '),
      asked: { how: 'from', path: args.slice(from + 1).join(' ') },
    }
  const last = args.at(-1)?.toLowerCase()
  if (last === 'mend' || last === 'cut') return { job: args.slice(0, -1).join(' '), asked: { how: last } }
  return { job: args.join(' '), asked: { how: 'look' } }
}
