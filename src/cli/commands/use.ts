import { dirname, resolve } from 'node:path'
import { told } from '../../words/told.ts'
import type { Desk } from '../desk.ts'
import { type Result, wrongUse } from '../result.ts'
import { troubleOf } from '../trouble.ts'

/** `use JOB`: chooses the job that lines go to. */
export function use(desk: Desk, args: readonly string[]): Result {
  const asked = args.join(' ').trim()
  if (asked === '')
    return wrongUse('missing', told('no job is named', '"putback use JOB", by number, name or path'))
  const path = desk.find(asked)
  if (typeof path !== 'string') return path
  if (dirname(path) !== resolve(desk.shelf.home)) {
    return wrongUse(
      'elsewhere',
      told(
        `${path} is not in the home ${desk.shelf.home}`,
        '"--job PATH" with each command, or "--home DIR"',
      ),
    )
  }
  const opened = desk.open(path)
  if (!opened.ok) return opened
  try {
    desk.shelf.choose(path)
  } catch (error) {
    return troubleOf(error, path)
  }
  const { no, name } = opened.session.state.job
  return { ok: true, text: [`job ${no} chosen: ${name}`], answer: { path, no, name } }
}
