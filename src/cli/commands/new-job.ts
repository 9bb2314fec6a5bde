import { plainText } from '../../label/plain-text.ts'
import { NumbersUsedUp } from '../../session/jobs.ts'
import { told } from '../../words/told.ts'
import type { Options } from '../arguments.ts'
import type { Desk } from '../desk.ts'
import { EXIT } from '../exit-codes.ts'
import { type Result, wrongUse } from '../result.ts'
import { troubleOf } from '../trouble.ts'

/** `new job NAME`: makes a job under the next free number, and chooses it. */
export function newJob(desk: Desk, args: readonly string[], options: Options): Result {
  const name = plainText(args.slice(1).join(' '))
  const units = options.units ?? 'metric'
  if (name === '') return wrongUse('missing', told('the job has no name', '"putback new job NAME"'))
  if (units !== 'metric' && units !== 'us') {
    return wrongUse('units', told(`'${units}' are no units`, '"--units metric" or "--units us"'))
  }
  try {
    const path = desk.shelf.create({ name, machine: plainText(options.machine ?? ''), units })
    const { session } = desk.opened(path)
    const { no } = session.state.job
    return {
      ok: true,
      entries: session.entries(),
      text: [
        `job ${no} made: ${name}`,
        `    in ${path}`,
        '    next: begin TITLE, or off with what comes off first',
      ],
    }
  } catch (error) {
    if (error instanceof NumbersUsedUp) {
      return wrongUse(
        'numbers-used-up',
        told(
          'all 999 job numbers are taken in this home',
          'use another with "--home DIR", or move old job folders away',
        ),
        EXIT.refused,
      )
    }
    return troubleOf(error, desk.shelf.home)
  }
}
