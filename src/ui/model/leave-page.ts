import { stepName } from '../../words/names.ts'
import { QUIT } from '../keys.ts'
import { type Choice, NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { line, strong } from '../text/line.ts'
import { groups, headed, indented } from './rows.ts'
import { cardNow, type Scene } from './scene.ts'

const WITHOUT_NOTE: Choice = { says: 'leave without a note', act: { do: 'leave', note: '' } }

/** Leaving with work under way: what is half done, and a word to whoever goes on. */
export function leavePage({ session, width }: Scene): Page {
  const { state } = session
  const card = cardNow(session)
  const step = card.build ?? card.strip
  return {
    title: line(strong('STOP WORK'), step === null ? '' : `  in ${stepName(state, step)}`),
    top: [],
    rows: rowsOf(
      groups(
        indented('Everything so far is recorded.', width),
        headed(
          'TO WHOEVER GOES ON',
          indented('Type a word for the card: what is loose, what comes next. Or Enter alone.', width),
        ),
        indented('Backspace on an empty line: stay.', width),
      ),
    ),
    enter: WITHOUT_NOTE,
    choice: NO_CHOICES,
    question: { take: noteOf },
    large: null,
  }
}

/** Whoever types the word once more means the word. */
function noteOf(text: string): Choice {
  if (QUIT.test(text)) return WITHOUT_NOTE
  return { says: 'leave with this note', act: { do: 'leave', note: text } }
}
