import type { State } from '../../journal/state.ts'
import type { WaitingReason } from '../../plan/waiting-reasons.ts'
import { say } from '../cures.ts'
import { counted } from '../grammar.ts'
import { stepName } from '../names.ts'
import { consumableName, outingName, secondLineName } from './names.ts'

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
        what: `${outingName(state, reason.outing)}, is back, and nobody has said what was taken out of it there`,
        cure: `look, then ${say(`took out ${reason.outing}: nothing`)} or ${say(`took out ${reason.outing}: ...`)}`,
      }
    case 'second-due':
      return {
        what: `${stepName(state, reason.step)}, is critical, and nobody has seen again ${secondLineName(state, reason.line)}`,
        cure: `${say(`seen ${reason.line}: ...`)} by somebody else, or by you later and from another side`,
      }
    case 'consumable-due':
      return {
        what: `${consumableName(state, reason.consumable)}, not put on`,
        cure: `${say(`applied ${reason.consumable}`)} when it is on`,
      }
    case 'worked-late':
      return {
        what: `${consumableName(state, reason.consumable)}, the joint was together ${counted(reason.late, 'minute')} too late`,
        cure: `take it apart, clean it off, put it on anew: ${say(`applied ${reason.consumable}`)}`,
      }
    case 'curing':
      return {
        what: `${consumableName(state, reason.consumable)}, must set${leftText(state, reason.until)}`,
        cure: 'wait, as its maker says',
      }
    default:
      return reason satisfies never
  }
}

/** `, 3 h 20 min to go`. */
function leftText({ clock }: State, until: string): string {
  const minutes = Math.ceil((Date.parse(until) - Date.parse(clock.at)) / 60_000)
  if (!(minutes > 0)) return ''
  const hours = Math.floor(minutes / 60)
  const rest = minutes % 60
  return `, ${hours > 0 ? `${hours} h ` : ''}${rest > 0 || hours === 0 ? `${rest} min ` : ''}to go`
}
