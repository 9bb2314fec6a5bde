import type { State } from '../journal/state.ts'
import type { SecondLine } from '../plan/waiting/waiting-facts.ts'
import type { SecondLookView } from '../session/second-look-view.ts'
import { consumableName } from './consumables/names.ts'
import { say } from './cures.ts'
import { durationWords } from './durations.ts'
import { markName, tighteningName } from './names.ts'
import { pieceName } from './pieces.ts'

/** One thing that is seen a second time: a piece, a mark, a tightening, or what was put on. */
export function secondLineName(state: State, line: SecondLine): string {
  if (line.startsWith('p')) return pieceName(state, line as `p${number}`)
  if (line.startsWith('m')) return markName(state, line as `m${number}`)
  if (line.startsWith('t')) return tighteningName(state, line as `t${number}`)
  return consumableName(state, line as `s${number}`)
}

/** How the second look at a critical step stands, in one line. */
export function secondLookText(view: SecondLookView): string {
  const { isDone, afterMinutes, waitMinutes, lines } = view
  const open = lines.filter(({ seen }) => seen === null).length
  if (!isDone)
    return `critical: once done, each line is seen again, by somebody else or ${durationWords(afterMinutes)} later`
  if (lines.length === 0) return 'critical, and nothing in it is seen line by line'
  if (open === 0)
    return `critical: seen again, ${lines.length === 1 ? 'its one line' : `all ${lines.length} lines`}`
  const wait = waitMinutes > 0 ? `; by the same person in ${durationWords(waitMinutes)}` : ''
  return `critical: ${open} of ${lines.length} still to be seen again${wait}`
}

/** A line that is to be seen again: `gear bolts: "seen p2: ..."`. */
export function toSeeText(state: State, line: SecondLine): string {
  return `${secondLineName(state, line)}: ${say(`seen ${line}: ...`)}`
}

/** A line that was seen again: `gear bolts: stripes in line (Ben)`. */
export function seenText(state: State, seen: NonNullable<SecondLookView['lines'][number]['seen']>): string {
  return `${secondLineName(state, seen.line)}: ${seen.says}${seen.by === undefined ? '' : ` (${seen.by})`}`
}
