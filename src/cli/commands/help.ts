import { nearestVerb } from '../../lines/read-line.ts'
import { say } from '../../words/cures.ts'
import { told } from '../../words/told.ts'
import { helpAnswer } from '../answers/help-text.ts'
import { type Result, wrongUse } from '../result.ts'

/** `help [WORD]`: what can be written. It needs no job. */
export function help(about: string | null): Result {
  const answer = helpAnswer(about)
  if (answer) return { ok: true, ...answer }
  const near = nearestVerb(about ?? '')
  const cure = near === null ? `${say('help')} shows what can be written` : `perhaps ${say(`help ${near}`)}`
  return wrongUse('unknown-word', told(`nothing begins with '${about}'`, cure))
}
