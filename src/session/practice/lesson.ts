import type { PieceId } from '../../ledger/piece.ts'
import type { FluidFacts, TighteningId } from '../../plan/facts.ts'
import type { Session } from '../session.ts'
import { isBeyond } from './beyond.ts'
import { buildLesson } from './build-lesson.ts'
import { stripLesson } from './strip-lesson.ts'

/** Where the learner is on the screens: what may be typed depends on it. */
export type LessonPlace =
  | { at: 'off' | 'left' | 'elsewhere' }
  /** A screen that takes the line for itself: an answer to its question, words to look for. */
  | { at: 'question' }
  | { at: 'step'; step: number }
  | { at: 'scan'; text: string }

/** What is to be done next in the practice job. */
export type LessonThing =
  | { do: 'begin' }
  | { do: 'go-off' }
  | { do: 'bolts' }
  | { do: 'lid'; bag: number | null }
  | { do: 'aid' }
  | { do: 'end'; byNumber: boolean }
  | { do: 'scan'; bag: number; code: string }
  /** `seen`: whether the screen shows what it holds up. */
  | { do: 'take-out'; piece: PieceId; count: number; called: string; seen: boolean }
  | { do: 'look'; step: number }
  | { do: 'take'; step: number }
  | { do: 'go-step'; step: number }
  | { do: 'fit'; piece: PieceId; count: number }
  /** Anything else that Enter does on the page of a step. */
  | { do: 'next' }
  | { do: 'torque'; called: string }
  | { do: 'turn'; fastener: string; through: number; all: number }
  | { do: 'answer'; tightening: TighteningId; fastener: string }
  | { do: 'fill'; fluid: FluidFacts }
  | { do: 'close'; step: number }
  | { do: 'put-away'; piece: PieceId }
  | { do: 'go-left' }
  | { do: 'clear' }
  | { do: 'leave-question' }
  /** Something that the practice does not teach, and that holds it up. */
  | { do: 'take-back' }
  | { do: 'done' }

export type Lesson = LessonThing & {
  /** Which lesson it is; null for what is on no path. */
  no: number | null
}

/** How many lessons there are. */
export const LESSONS = 12

/**
 * What the practice job says next; null in any other job. It follows from the record and from the screen, and is kept
 * nowhere: whatever the learner did, an undo and a restart too, it goes on from where the record stands.
 */
export function lessonOf(session: Session, place: LessonPlace): Lesson | null {
  const { state } = session
  if (!state.job.practice || session.unlawful !== null || session.store.readOnly !== null) return null
  const thing = thingNow(session, place)
  return { ...thing, no: NUMBERS[thing.do] ?? null }
}

function thingNow(session: Session, place: LessonPlace): LessonThing {
  const { state } = session
  if (state.cleared || state.closed) return { do: 'done' }
  if (place.at === 'question') return { do: 'leave-question' }
  // Until somebody says how a doubted bolt stands, nothing can be taken back either.
  for (const { id, suspect } of state.tightenings.values())
    if (suspect) return { do: 'answer', tightening: id, fastener: suspect.fastener }
  if (isBeyond(session)) return { do: 'take-back' }
  return stripLesson(session, place) ?? buildLesson(session, place)
}

const NUMBERS: Partial<Record<LessonThing['do'], number>> = {
  begin: 1,
  'go-off': 2,
  bolts: 2,
  lid: 3,
  aid: 4,
  end: 5,
  scan: 6,
  'take-out': 7,
  look: 8,
  take: 9,
  'go-step': 9,
  fit: 9,
  next: 9,
  fill: 9,
  torque: 10,
  turn: 11,
  answer: 11,
  close: 11,
  'put-away': 12,
  'go-left': 12,
  clear: 12,
}
