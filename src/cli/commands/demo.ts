import { cardOf } from '../../session/views.ts'
import { cardText } from '../answers/card-text.ts'
import type { Options } from '../arguments.ts'
import { addDemoJob } from '../demo-job.ts'
import type { Desk } from '../desk.ts'
import type { Result } from '../result.ts'
import { troubleOf } from '../trouble.ts'

/** `demo`: an invented job to play with, up to the middle of its build-up, or whole. */
export function demo(desk: Desk, _args: readonly string[], options: Options): Result {
  try {
    const path = addDemoJob(desk.shelf, { whole: options.whole })
    const opened = desk.open(path)
    if (!opened.ok) return opened
    const { session } = opened
    const { no, name } = session.state.job
    const card = cardOf(session)
    return {
      ok: true,
      text: [
        `job ${no} made: ${name}. All of it is invented: no figure in it is for a real machine.`,
        `    in ${path}`,
        ...cardText(session, card),
      ],
      answer: { path, no, name, entries: session.entries().length },
    }
  } catch (error) {
    return troubleOf(error, desk.shelf.home)
  }
}
