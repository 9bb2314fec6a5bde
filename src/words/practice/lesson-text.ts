import type { State } from '../../journal/state.ts'
import type { Lesson } from '../../session/practice/lesson.ts'
import { countedPiece, pieceName } from '../pieces.ts'
import { placeName } from '../places.ts'

/** A lesson in two sentences: why, and what to do. */
interface LessonText {
  why: string
  /** What stands in double quotes is typed as it stands, and Enter after it; without quotes Enter alone is meant. */
  act: string
}

/** What a lesson says. */
export function lessonText(state: State, lesson: Lesson): LessonText {
  switch (lesson.do) {
    case 'begin':
      return {
        why: 'A hand pump has to come apart. One piece of work is a step.',
        act: 'Type "begin lid off" and press Enter.',
      }
    case 'go-off':
      return {
        why: 'What comes off is written on the screen OFF, the first one.',
        act: 'Type ".1" and press Enter: a dot, then a digit.',
      }
    case 'bolts':
      return {
        why: 'Four bolts hold the lid. Write them as you would on a bag:',
        act: 'type "4 M6x20 hex 8 lid bolts" and press Enter.',
      }
    case 'lid':
      return {
        why:
          lesson.bag === null
            ? 'The bolts are off and written down.'
            : `They went into ${placeName(state, `c${lesson.bag}`)}. Write its code on a slip.`,
        act: 'Then the lid: type "lid" and press Enter.',
      }
    case 'aid':
      return {
        why: 'The port beneath is open. A rag in it keeps dirt out:',
        act: 'type "rag > port" and press Enter.',
      }
    case 'end':
      return {
        why: 'That is all that comes off. End the step:',
        act: lesson.byNumber
          ? 'type "7" and press Enter. A number chooses its row.'
          : 'type "end" and press Enter.',
      }
    case 'scan':
      return {
        why: `Weeks later you find ${placeName(state, `c${lesson.bag}`)}. Does it go on now?`,
        act: `Scan it, or type "${lesson.code}" and press Enter.`,
      }
    case 'take-out':
      return {
        why: lesson.seen
          ? `STOPPED: that was the point. In there still: ${countedPiece(state, lesson.piece, lesson.count)}.`
          : `In the machine still: ${countedPiece(state, lesson.piece, lesson.count)}.`,
        act: `Remove it: type "take out ${lesson.called}" and press Enter.`,
      }
    case 'look':
      return {
        why: 'A lid hides what is beneath. All in place, clean, and empty?',
        act: `Seen? Type "look ${lesson.step}" and press Enter.`,
      }
    case 'take':
      return {
        why: 'Nothing stands in the way now. Put it back together:',
        act: `type "take ${lesson.step}" and press Enter.`,
      }
    case 'go-step':
      return {
        why: 'A step is under way, and you are on another screen.',
        act: `Type "step ${lesson.step}" and press Enter: back to the work.`,
      }
    case 'fit':
      return {
        why: `Put on ${countedPiece(state, lesson.piece, lesson.count)}.`,
        act: 'When that is done, press Enter with nothing typed.',
      }
    case 'next':
      return {
        why: 'The next thing stands on the screen. Do it.',
        act: 'When it is done, press Enter with nothing typed.',
      }
    case 'torque':
      return {
        why: 'How tight? Only your manual knows. As if it said 8 Nm:',
        act: `type "tighten ${lesson.called}: 8 Nm" and press Enter.`,
      }
    case 'turn':
      return {
        why: `Tighten bolt ${lesson.fastener}: ${lesson.through} of ${lesson.all} are through.`,
        act: 'When it clicks, press Enter: one for each bolt.',
      }
    case 'answer':
      return {
        why: `Work broke off at ${lesson.fastener}, and nobody knows whether it was turned.`,
        act: `Say it: type "turned ${lesson.tightening} no because its mark has not moved" and press Enter.`,
      }
    case 'fill':
      return {
        why: `What came out goes in again: ${lesson.fluid.name}.`,
        act: `Type "fill ${lesson.fluid.id} ${lesson.fluid.typed || '1 L'}" and press Enter.`,
      }
    case 'close':
      return {
        why: 'Nothing is left to do in this step.',
        act: 'Press Enter with nothing typed: it is done.',
      }
    case 'put-away':
      return {
        why: `${pieceName(state, lesson.piece)} is out of the toolbox still.`,
        act: `Put it away, then type "take out ${lesson.piece}" and press Enter.`,
      }
    case 'go-left':
      return {
        why: 'All is on again. Is anything left over?',
        act: 'Type ".4" and press Enter.',
      }
    case 'clear':
      return {
        why: 'Nothing: every bolt is home, and no rag is in.',
        act: 'Type "1" and press Enter to clear it.',
      }
    case 'leave-question':
      return {
        why: 'This screen takes what is typed for itself.',
        act: 'Type "." and press Enter: back to where you are.',
      }
    case 'take-back':
      return {
        why: 'That leads further than this practice goes, and holds it up.',
        act: 'Type "0" and press Enter: it takes the last entry back.',
      }
    case 'done':
      return {
        why: 'WELL DONE: apart, in a bag, back together, and nothing left over.',
        act: state.job.archived
          ? '"new job" begins yours.'
          : '"new job" begins yours; "archive" puts this away.',
      }
    default:
      return lesson satisfies never
  }
}
