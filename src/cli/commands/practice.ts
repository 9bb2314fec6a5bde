import type { Desk } from '../desk.ts'
import type { Result } from '../result.ts'
import { troubleOf } from '../trouble.ts'

/** `practice`: a job to learn with. Its lessons stand above the screens, so here they are only pointed at. */
export function practice(desk: Desk): Result {
  try {
    const path = desk.shelf.addPractice()
    const opened = desk.open(path)
    if (!opened.ok) return opened
    const { no, name, machine } = opened.session.state.job
    return {
      ok: true,
      text: [
        `job ${no} made: ${name}, ${machine}`,
        `    in ${path}`,
        '    next: putback opens the screens; what to do stands on top of them',
      ],
      answer: { path, no, name },
    }
  } catch (error) {
    return troubleOf(error, desk.shelf.home)
  }
}
