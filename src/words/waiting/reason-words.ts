import type { State } from '../../journal/state.ts'
import type { OutingId, SecondLine } from '../../plan/waiting/waiting-facts.ts'
import type { WaitingReason } from '../../plan/waiting/waiting-reasons.ts'
import { consumableParts } from '../consumables/reason-words.ts'
import { say } from '../cures.ts'
import { durationWords } from '../durations.ts'
import { joined } from '../grammar.ts'
import { stepName } from '../names.ts'
import { countedPiece } from '../pieces.ts'
import { secondLineName } from '../second-look-text.ts'
import { tookOutWords } from './took-out-words.ts'

/** Why a step waits for a word or for time, with what lifts it. */
export function waitingWords(state: State, reason: WaitingReason): string {
  const { what, cure } = waitingParts(state, reason)
  return `${what}: ${cure}`
}

/** The same, taken apart for a table. */
export function waitingParts(state: State, reason: WaitingReason): { what: string; cure: string } {
  switch (reason.code) {
    case 'out-unanswered':
      return {
        what: backText(state, reason.outing),
        cure: `look, then ${tookOutWords(reason.outing)}`,
      }
    case 'second-due':
      return {
        what: `${stepName(state, reason.step)}, is critical, and nobody has seen again ${secondLineName(state, reason.line)}`,
        cure: secondCure(state, reason.step, reason.line),
      }
    case 'consumable-due':
    case 'worked-late':
    case 'curing':
      return consumableParts(state, reason)
    default:
      return reason satisfies never
  }
}

/** Whoever did the work sees what he meant to do: so somebody else looks, or the same after something else was done. */
function secondCure(state: State, step: number, line: SecondLine): string {
  const minutes = state.steps.get(step)?.critical?.afterMinutes
  const later = minutes === undefined ? 'later' : `${durationWords(minutes)} after the work`
  return `${say(`seen ${line}: ...`)} with what was seen, by somebody else, or by the same ${later} and from another side`
}

/** `b1 is back from Miller, and nobody has said what was taken out there of 1 × cylinder head`. */
function backText(state: State, id: OutingId): string {
  const { to, pieces = [] } = state.outings.get(id) ?? {}
  const back = pieces.filter(({ count, away }) => away < count)
  const names = back.map(({ piece, count, away }) => countedPiece(state, piece, count - away))
  return `${id} is back from ${to}, and nobody has said what was taken out there of ${joined(names)}`
}
