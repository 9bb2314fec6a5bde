import { secondLookView } from '../../session/second-look-view.ts'
import { secondLookText, seenText, toSeeText } from '../../words/second-look-text.ts'
import type { Choice } from '../page.ts'
import type { Line } from '../text/line.ts'
import { bulleted, headed, indented } from './rows.ts'
import type { Scene } from './scene.ts'

/** What of a critical step is to be seen again, each line by its number, and what was seen. Nothing for other steps. */
export function secondLookRows(
  { session, width }: Scene,
  no: number,
  add: (choice: Choice, text: string) => Line[],
): Line[] {
  const view = secondLookView(session, no)
  if (!view) return []
  const { state } = session
  const rows = view.lines.flatMap(({ line, seen }) => {
    if (seen) return bulleted(seenText(state, seen), width)
    if (!view.isDone) return []
    const before = `seen ${line}: `
    return add(
      { says: before, act: { do: 'write', before, asks: 'Say what was seen.' } },
      toSeeText(state, line),
    )
  })
  return headed('SEEN A SECOND TIME', [...indented(secondLookText(view), width), ...rows])
}
