import type { Screen } from '../navigation.ts'
import { type Choice, choicesOf, type Page, rowsOf } from '../page.ts'
import { line, strong } from '../text/line.ts'
import { groups, headed, indented, numbered } from './rows.ts'
import type { Scene } from './scene.ts'

/** Leaving while an errand is out: it is waited for, or left in the middle. */
export function waitPage({ width }: Scene, { note, isWaiting }: Extract<Screen, { at: 'wait' }>): Page {
  const drop: Choice = {
    says: 'leave at once, with it half done',
    act: { do: 'leave', note, errand: 'drop' },
  }
  return {
    title: line(strong('STILL UNDER WAY')),
    top: [],
    rows: rowsOf(
      groups(
        isWaiting ? indented(line(strong('Leaves as soon as it is done.')), width) : [],
        indented(
          'Left in the middle, what is recorded so far stays. The same words do the rest another time.',
          width,
        ),
        headed('OR', numbered(1, drop.says, width)),
        indented('Backspace on an empty line: stay.', width),
      ),
    ),
    enter: isWaiting
      ? { says: 'nothing: it is waited for', act: { do: 'say', what: 'It leaves as soon as it is done.' } }
      : { says: 'wait for it, and leave then', act: { do: 'leave', note, errand: 'wait' } },
    choice: choicesOf(new Map([[1, drop]])),
    large: null,
  }
}
