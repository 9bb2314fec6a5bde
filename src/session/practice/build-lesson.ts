import type { Account } from '../../ledger/account.ts'
import type { Reason } from '../../plan/reasons.ts'
import { codeOf, scan } from '../scan.ts'
import type { Session } from '../session.ts'
import { untightened } from '../untightened.ts'
import { cardOf, containersOfStep, type Todo } from '../views.ts'
import type { LessonPlace, LessonThing } from './lesson.ts'

/** What goes back next: a scan, what it is stopped by, and then whatever the job itself has next. */
export function buildLesson(session: Session, place: LessonPlace): LessonThing {
  const { next } = cardOf(session)
  switch (next.kind) {
    case 'begin':
      return { do: 'begin' }
    case 'strip':
      return { do: 'end', byNumber: place.at === 'off' }
    case 'blocked':
      return reasonLesson(session, next.step, next.reasons, place)
    case 'look':
      return { do: 'look', step: next.step }
    case 'take':
      return { do: 'take', step: next.step }
    case 'todo':
      return todoLesson(session, next.step, next.todo, place)
    case 'close':
      return closeLesson(session, next.step, place)
    case 'leftovers': {
      const left = next.leftovers.find(({ code }) => code === 'tool-out' || code === 'aid-in')
      return left && 'piece' in left ? { do: 'put-away', piece: left.piece } : { do: 'take-back' }
    }
    case 'clear':
      return { do: place.at === 'left' ? 'clear' : 'go-left' }
    default:
      return { do: 'done' }
  }
}

/** What lifts one of the reasons that hold up a step, nearest to hand first. */
function reasonLesson(
  session: Session,
  step: number,
  reasons: readonly Reason[],
  place: LessonPlace,
): LessonThing {
  for (const reason of reasons) {
    if (reason.code === 'still-stripping') return { do: 'end', byNumber: false }
    if (reason.code === 'aid-in') return stopLesson(session, step, reason, place)
  }
  const isLookAlone = reasons.every(({ code }) => code === 'look-due')
  return isLookAlone ? { do: 'look', step } : { do: 'take-back' }
}

/** First the bag is scanned, so that the program is seen to stop its user; then what it stops at is put right. */
function stopLesson(
  session: Session,
  step: number,
  { piece, count }: Pick<Extract<LessonThing, { do: 'take-out' }>, 'piece' | 'count'>,
  place: LessonPlace,
): LessonThing {
  const { state } = session
  const answer = place.at === 'scan' ? scan(session, place.text) : null
  const seen = answer?.kind === 'container' && answer.verdict.kind === 'not-yet'
  const [bag] = containersOfStep(state, step)
  if (bag !== undefined && !seen) return { do: 'scan', bag, code: codeOf(state, bag) }
  return { do: 'take-out', piece, count, called: called(session, piece), seen }
}

function todoLesson(session: Session, step: number, todo: Todo, place: LessonPlace): LessonThing {
  if (todo.kind === 'take-out') {
    const { piece } = todo.account
    if (session.state.steps.get(step)?.built !== 'underway')
      return stopLesson(session, step, { piece: piece.id, count: todo.count }, place)
    return {
      do: 'take-out',
      piece: piece.id,
      count: todo.count,
      called: called(session, piece.id),
      seen: false,
    }
  }
  if (todo.kind === 'fill') return { do: 'fill', fluid: todo.fluid }
  if (todo.kind === 'fit' && todo.lies.length === 0) return { do: 'take-back' }
  if (!isAt(place, step)) return { do: 'go-step', step }
  if (todo.kind === 'fit') return { do: 'fit', piece: todo.account.piece.id, count: todo.owed }
  if (todo.kind !== 'turn') return { do: 'next' }
  const { next, tightening } = todo
  return { do: 'turn', fastener: next.fastener, through: next.through, all: tightening.order.length }
}

/** Nothing is closed before its bolts are tight: the figure is the learner's own. */
function closeLesson(session: Session, step: number, place: LessonPlace): LessonThing {
  const [loose] = untightened(session.state, step)
  if (loose) return { do: 'torque', called: called(session, loose.piece.id) }
  const reasons = session.gates().finish(step)
  if (reasons.length > 0) return reasonLesson(session, step, reasons, place)
  return isAt(place, step) ? { do: 'close', step } : { do: 'go-step', step }
}

function isAt(place: LessonPlace, step: number): boolean {
  return place.at === 'step' && place.step === step
}

/** What a piece is called in a line: by its name where that is plain and means no other, else by its number. */
function called({ state }: Session, id: Account['piece']['id']): string {
  const all = [...state.ledger.accounts.values()]
  const { name = '', set } = all.find(({ piece }) => piece.id === id)?.piece ?? {}
  const isOnlyOne = all.filter(({ piece }) => piece.name.includes(name)).length === 1
  return set === undefined && isOnlyOne && TAUGHT_NAMES.includes(name) ? name : id
}

/** Names that were given as the lessons say. */
const TAUGHT_NAMES: readonly string[] = ['lid bolts', 'rag']
