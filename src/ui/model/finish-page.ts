import { finishView } from '../../session/finish-view.ts'
import { finishParts } from '../../words/finish-text.ts'
import { stepName } from '../../words/names.ts'
import { goTo, type Large, type Page, rowsOf } from '../page.ts'
import { line, strong } from '../text/line.ts'
import { inLarge } from './large-words.ts'
import { nextChoice } from './next.ts'
import { bulleted, groups, headed, indented } from './rows.ts'
import type { Scene } from './scene.ts'
import { whenText } from './when.ts'

/** When the machine is together at the earliest, why not earlier, and what can be done meanwhile. */
export function finishPage(scene: Scene): Page {
  const { session, width, now } = scene
  const { state } = session
  const view = finishView(session)
  const parts = finishParts(session.stateNow(), view, (at) => whenText(at, now))
  const rows = parts.map(({ heading, lines }) =>
    heading === ''
      ? lines.flatMap((text) => indented(text, width))
      : headed(
          heading,
          lines.flatMap((text) => bulleted(text, width)),
        ),
  )
  return {
    title: line(strong('WHEN IT IS TOGETHER'), '  an estimate'),
    top: [],
    rows: rowsOf(groups(...rows)),
    enter: nextChoice(scene),
    choice: (no) =>
      state.steps.has(no) ? goTo(`look at ${stepName(state, no)}`, { at: 'step', step: no }) : undefined,
    large: largeOf(scene, view),
  }
}

function largeOf({ now }: Scene, { from, schedule, steps }: ReturnType<typeof finishView>): Large | null {
  if (schedule === null || steps.length === 0) return null
  const at = new Date(Date.parse(from) + schedule.finish * 60_000).toISOString()
  return inLarge(whenText(at, now), ['together at the earliest, an estimate'])
}
