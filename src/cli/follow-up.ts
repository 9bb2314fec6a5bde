import { heedsAfter } from '../session/heeds.ts'
import { isLastRound, toTip } from '../session/last-round.ts'
import type { Session } from '../session/session.ts'
import type { Entry } from '../session/stored-entry.ts'
import { containersOfStep } from '../session/views.ts'
import type { BagLine } from '../trade/bag-line/bag-item.ts'
import { driveText } from '../trade/drive.ts'
import { threadText } from '../trade/thread.ts'
import { questionText } from '../words/bag-questions.ts'
import { explainWords } from '../words/cures.ts'
import { entryText } from '../words/entries.ts'
import { joined } from '../words/grammar.ts'
import { heedText } from '../words/heeds.ts'
import { liesIn } from '../words/lookups.ts'
import { countedPiece } from '../words/pieces.ts'
import { containerName } from '../words/places.ts'
import { label } from './answers/labels.ts'
import { roundLines } from './answers/round-text.ts'

/** What a person does next because of an entry: a code to write on a bag, what a bag still holds, what to look at. */
export function followUp(session: Session, entry: Entry): string[] {
  const { state } = session
  return [...toDo(session, entry), ...heedsAfter(state, entry).map((heed) => heedText(state, heed))]
}

function toDo(session: Session, entry: Entry): string[] {
  const { state } = session
  const code = label(state)
  const opened = openedBy(entry)
  // What has its label from a printed sheet needs nothing written.
  if (opened !== undefined && state.containers.get(opened)?.run !== undefined) return []
  if (opened !== undefined) return [`write on ${containerName(state, opened)}: ${code(opened)}`]
  if (entry.type === 'undone' || entry.type === 'redone') {
    const other = session.entries()[entry.entry - 1]
    return other
      ? [`${entry.type === 'undone' ? 'taken back' : 'in force again'}: ${entryText(state, other)}`]
      : []
  }
  if (entry.type === 'build-done') {
    const holding = containersOfStep(state, entry.step).map((no) => {
      const holds = liesIn(state, no).map(({ piece, count }) => countedPiece(state, piece, count))
      return `${containerName(state, no)} (${code(no)}) still holds ${holds.join(', ')}`
    })
    return [...holding, ...notTipped(state, entry.step)]
  }
  if (entry.type === 'build-began') {
    const lines = isLastRound(state, entry.step) ? roundLines(state) : []
    return lines.length === 0 ? [] : ['Tip out, one after the other:', ...lines.map((line) => `  ${line}`)]
  }
  if (entry.type === 'counted') {
    return entry.lines.flatMap(({ difference }) => (difference ? [explainWords(state, difference)] : []))
  }
  return []
}

/** Nothing holds a round up for a bag that was passed over: it is said. */
function notTipped(state: Session['state'], step: number): string[] {
  const left = isLastRound(state, step) ? toTip(state).filter(({ agreed }) => !agreed) : []
  const names = left.map(({ container }) => containerName(state, container))
  return left.length === 0 ? [] : [`Not counted on this round: ${joined(names)}.`]
}

/** What a bag line leaves open. */
export function questionsOf({ items }: Extract<BagLine, { understood: true }>): string[] {
  const names = { thread: threadText, drive: driveText }
  return items
    .flatMap((item) => ('questions' in item ? item.questions : []))
    .map((question) => questionText(question, names))
}

function openedBy(entry: Entry): number | undefined {
  if (entry.type === 'container-opened') return entry.container.no
  return 'opened' in entry ? entry.opened?.no : undefined
}
