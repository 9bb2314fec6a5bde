import { isLastRound } from '../../session/last-round.ts'
import { measuresOfStep } from '../../session/measure-views.ts'
import { secondLookView } from '../../session/second-look-view.ts'
import type { Session } from '../../session/session.ts'
import { timersOf } from '../../session/timers.ts'
import { planRows, todoOf } from '../../session/views.ts'
import { askedText } from '../../words/consumables/asked-text.ts'
import { timerText } from '../../words/consumables/timer-words.ts'
import { sentence } from '../../words/grammar.ts'
import { measureLine } from '../../words/measurements/measure-text.ts'
import { stepName } from '../../words/names.ts'
import { countedPiece } from '../../words/pieces.ts'
import { reasonLines } from '../../words/reason-lines.ts'
import { secondLookText, seenText, toSeeText } from '../../words/second-look-text.ts'
import { NOT_A_SPECIFICATION } from '../../words/sums/figures.ts'
import { stepLine } from './back-text.ts'
import { placeWithLabel } from './labels.ts'
import { todoText } from './next-text.ts'
import { picturesLine } from './photos-text.ts'
import { roundLines } from './round-text.ts'

/** A step: how it stands, what it holds, what blocks it, what is to be done in it; null when there is none. */
export function stepAnswer(session: Session, no: number): { text: string[]; answer: unknown } | null {
  const state = session.stateNow()
  const row = planRows(session).find(({ step }) => step.no === no)
  if (!row) return null
  const { step, reasons, overrides } = row
  const contents = session.gates().contentsOf(no)
  const todo = step.built === 'done' ? [] : todoOf(session, no)
  const notes = state.notes.filter((note) => note.step === no)
  const measured = measuresOfStep(state, no)
  const needed = [...(session.gates().needs.get(no) ?? [])]
  const text = [
    stepLine(row).trim(),
    ...(step.way === 'both'
      ? [`Came off ${step.after.length === 0 ? 'first' : `after ${list(step.after)}`}.`]
      : []),
    ...(needed.length === 0
      ? []
      : [`Before it: ${needed.map((lower) => stepName(state, lower)).join('; ')}.`]),
    ...(step.hides ? [`It hides what is beneath${step.looked ? '; the last look was taken' : ''}.`] : []),
    ...secondLookLines(session, no),
    ...overrides.map((reason) => `Overridden: ${reason}`),
    ...headed('Blocked by:', reasonLines(state, reasons)),
    ...headed('Measured:', measured.length === 0 ? [] : [...measured.map(measureLine), NOT_A_SPECIFICATION]),
    ...headed(
      'Put on in it:',
      contents.consumables.map((consumable) => askedText(state, consumable)),
    ),
    ...headed(
      'Time runs:',
      timersOf(state)
        .filter(({ consumable }) => consumable.step === no)
        .map((timer) => timerText(state, timer)),
    ),
    ...headed(
      'To do:',
      todo.map((each) => todoText(state, each)),
    ),
    ...headed(
      'Tip out, one after the other:',
      step.built !== 'done' && isLastRound(state, no) ? roundLines(state) : [],
    ),
    ...headed(
      'Its pieces:',
      contents.pieces.map(({ piece, should, at }) => {
        const lies = [...at].map(([place, count]) => `${count} ${placeWithLabel(state, place)}`).join(', ')
        return `${piece.id}  ${countedPiece(state, piece.id, should)}: ${lies === '' ? 'nowhere' : lies}`
      }),
    ),
    ...headed(
      'Notes:',
      notes.map(({ kind, text }) => (kind === 'note' ? text : `${kind}: ${text}`)),
    ),
    ...picturesLine(state, { step: no }),
  ]
  return { text, answer: { ...row, needs: needed, todo, measured, notes, pieces: contents.pieces } }
}

function secondLookLines(session: Session, no: number): string[] {
  const view = secondLookView(session, no)
  if (!view) return []
  const { state } = session
  const lines = view.lines.flatMap(({ line, seen }) =>
    seen ? [seenText(state, seen)] : view.isDone ? [toSeeText(state, line)] : [],
  )
  return [sentence(secondLookText(view)), ...lines.map((each) => `  ${each}`)]
}

function headed(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [title, ...lines.map((line) => `  ${line}`)]
}

function list(numbers: readonly number[]): string {
  return numbers.length === 1 ? `step ${numbers[0]}` : `steps ${numbers.join(', ')}`
}
