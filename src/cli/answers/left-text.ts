import { knownSpares } from '../../session/known-spares.ts'
import { proposedRound } from '../../session/last-round.ts'
import type { Session } from '../../session/session.ts'
import { isEmptyRecord, trialBalance } from '../../session/views.ts'
import { say } from '../../words/cures.ts'
import { sentence } from '../../words/grammar.ts'
import { LAST_ROUND_WHY } from '../../words/lain-in.ts'
import { sparesText } from '../../words/spares-text.ts'
import { isOnePhrase, toldLeftovers } from '../../words/told-leftovers.ts'
import { label } from './labels.ts'

/** Nothing else finds what was ticked and not fitted. */
function roundFirst(state: Session['state']): string[] {
  const no = state.cleared || state.started ? null : proposedRound(state)
  return no === null
    ? []
    : [sentence(`a last round comes before that, for ${LAST_ROUND_WHY}: ${say(`accept ${no}`)} adds it`)]
}

/** Everything that stands between the machine and its first start, with what to do about each. */
export function leftAnswer(session: Session): { text: string[]; answer: unknown } {
  const state = session.stateNow()
  const leftovers = trialBalance(session)
  const spares = sparesText(state, knownSpares(state))
  if (leftovers.length === 0) {
    if (isEmptyRecord(state)) return { text: ['Nothing has come off yet.'], answer: leftovers }
    const next = state.started
      ? 'The machine has been started.'
      : state.cleared
        ? 'It is cleared.'
        : 'Next: clear'
    return { text: [`Nothing is left over. ${next}`, ...roundFirst(state), ...spares], answer: leftovers }
  }
  const text = toldLeftovers(state, leftovers, label(state)).flatMap((told) => {
    const { leftover, what, where, undo, cure } = told
    const join = where === '' || isOnePhrase(leftover) ? '' : ':'
    const line = `${what}${join} ${where}`.replace(/ :/g, ':').trim()
    return [line, ...(undo === '' ? [] : [`    to reach it, undo: ${undo}`]), `    ${cure}`]
  })
  return { text: [`${leftovers.length} left over:`, ...text, ...spares], answer: leftovers }
}
