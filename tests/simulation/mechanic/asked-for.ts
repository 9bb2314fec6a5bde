import { leftovers } from '../../../src/plan/leftovers.ts'
import type { Session } from '../../../src/session/session.ts'
import type { Doing } from '../job/act.ts'

/**
 * Whether the program asks for a look that is taken for its sake alone: a mark confirmed, the last look, a line seen again, the
 * last round. Nobody takes one otherwise, so what is found by it is found by the program. `line`: what would be said of it.
 */
export function isAskedFor(session: Session, doing: Doing, line: string): boolean {
  const [, id = ''] = /^\w+ (\w+)/.exec(line) ?? []
  switch (doing) {
    case 'confirm':
      return isAsked(session, ({ code, ...of }) => code === 'mark-open' && 'mark' in of && of.mark === id)
    case 'see again':
      return isAsked(session, ({ code, ...of }) => code === 'second-due' && 'line' in of && of.line === id)
    case 'round':
      return isAsked(
        session,
        ({ code, ...of }) => code === 'step-open' && 'step' in of && of.step === Number(id),
      )
    case 'look':
      return session.gates().lookDue(Number(id)).length > 0
    default:
      return true
  }
}

/** By any gate: the last one first, for it has nearly all that the others have. */
function isAsked(session: Session, isIt: (reason: { code: string }) => boolean): boolean {
  const gates = session.gates()
  if (leftovers(gates).some(isIt)) return true
  return [...session.state.steps.keys()].some((no) => [...gates.start(no), ...gates.finish(no)].some(isIt))
}
