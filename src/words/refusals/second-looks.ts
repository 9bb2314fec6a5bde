import { doneWords, say } from '../cures.ts'
import { durationWords } from '../durations.ts'
import { stepName } from '../names.ts'
import { secondLineName } from '../second-look-text.ts'
import { told } from '../told.ts'
import type { Tellers } from './tellers.ts'

/** What concerns the second look at a critical step. */
export const secondLookRefusals: Tellers<
  'not-critical' | 'second-before-done' | 'not-a-second-line' | 'second-too-soon'
> = {
  'not-critical': (state, { step }) =>
    told(
      `${stepName(state, step)}, is not critical, so nothing in it is to be seen a second time`,
      `${say(`step ${step} critical`)} asks for it`,
    ),
  'second-before-done': (state, { step, built }) =>
    told(
      `${stepName(state, step)}, is not done: what may still change cannot be seen a second time`,
      built === 'underway' ? `${doneWords(state, step)} when it is complete` : say(`take ${step}`),
    ),
  'not-a-second-line': (state, { step, line, known }) =>
    told(
      `${secondLineName(state, line)} is nothing that is seen a second time in ${stepName(state, step)}`,
      known.length === 0 ? 'nothing in this step is seen line by line' : 'name one of these by its id',
      known.map((id) => withId(id, secondLineName(state, id))),
    ),
  'second-too-soon': (state, { step, by, afterMinutes, waitMinutes }) => {
    const workers = state.steps.get(step)?.work?.by.filter((name) => name !== '') ?? []
    const who =
      by === ''
        ? `nobody has said who looks, so it may be the one who did the work${workers.length > 0 ? `, ${workers.join(' or ')}` : ''}`
        : `${by} did work in it`
    return told(
      `too soon for a second look at ${stepName(state, step)}: ${who}, and ${durationWords(afterMinutes)} have to pass after the work`,
      `wait ${durationWords(waitMinutes)} and look from another side, or let somebody else look who says a name with --by`,
    )
  },
}

/** A name behind its id, where it does not begin with it. */
function withId(id: string, name: string): string {
  return name.startsWith(id) || name.startsWith(`mark ${id}`) ? name : `${id}, ${name}`
}
