import { LESSONS, type LessonPlace, lessonOf } from '../../../session/practice/lesson.ts'
import { lessonText } from '../../../words/practice/lesson-text.ts'
import type { Screen } from '../../navigation.ts'
import type { Page } from '../../page.ts'
import { blank, type Line, line, strong, widthOf, wrap } from '../../text/line.ts'
import { withWords } from '../rows.ts'
import type { Hall, Scene } from '../scene.ts'

/** What the practice job says above every screen; nothing in any other job. */
export function lessonRows(scene: Hall | Scene, screen: Screen, page: Page): Line[] {
  if (!('session' in scene)) return []
  const { session, width, height } = scene
  const lesson = lessonOf(session, placeOf(screen, page))
  if (!lesson) return []
  const { why, act } = lessonText(session.state, lesson)
  const label = lesson.no === null ? 'PRACTICE' : `PRACTICE ${lesson.no}/${LESSONS}`
  const indent = widthOf(line(label)) + 3
  const before = line(' ', strong(label), '  ')
  return [
    ...wrap(line(...before, why), width, indent),
    ...wrap(line(' '.repeat(indent), ...withWords(act)), width, indent),
    // Apart from the screen beneath, where that costs it nothing.
    ...(height >= ROOMY ? [blank] : []),
  ]
}

const ROOMY = 30

function placeOf(screen: Screen, page: Page): LessonPlace {
  // The help looks for what is typed, as a question takes it for its answer.
  if (page.question || screen.at === 'help') return { at: 'question' }
  if (screen.at === 'step') return { at: 'step', step: screen.step }
  if (screen.at === 'scan') return { at: 'scan', text: screen.text }
  return { at: screen.at === 'off' || screen.at === 'left' ? screen.at : 'elsewhere' }
}
