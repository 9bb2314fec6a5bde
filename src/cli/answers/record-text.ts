import { asBuilt } from '../../record/as-built.ts'
import { asBuiltText } from '../../record/as-built-text.ts'
import type { Session } from '../../session/session.ts'
import { label } from './labels.ts'
import { whenText } from './when.ts'

/** The as-built record of a job, in the local time of this machine. */
export function recordAnswer(session: Session): { text: string[]; answer: unknown } {
  const { state } = session
  const facts = asBuilt(session)
  const zone = new Intl.DateTimeFormat().resolvedOptions().timeZone
  return { text: asBuiltText(state, facts, { when: whenText, zone, code: label(state) }), answer: facts }
}
