import type { DueView } from '../../../session/due-view.ts'
import { missingText } from '../../../words/missing-text.ts'
import { type Choice, goTo } from '../../page.ts'
import { SIGNS, type Sign } from '../../signs.ts'
import { type Line, line, plain, strong } from '../../text/line.ts'
import { bulleted } from '../rows.ts'
import type { State } from '../scene.ts'

type Missing = DueView['missing'][number]

/** What is missing or broken of a piece, and the ways out: its number goes to the step that it belongs to. */
export function missingRows(
  state: State,
  view: Missing,
  { width, add }: { width: number; add: (sign: Sign, text: Line, choice: Choice) => Line[] },
): Line[] {
  const { what, ways } = missingText(state, view)
  const [name = '', ...facts] = what.split(': ')
  return [
    ...add(
      isBrokenOnly(view) ? SIGNS.broken : SIGNS.missing,
      line(strong(name), plain(`  ${facts.join(': ')}`)),
      goTo(`look at step ${view.step}`, { at: 'step', step: view.step }),
    ),
    ...ways.flatMap((way) => bulleted(way, width)),
  ]
}

function isBrokenOnly({ short, lost, differences }: Missing): boolean {
  return short === 0 && lost === 0 && differences.length === 0
}
