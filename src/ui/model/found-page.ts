import { foundView } from '../../session/found-view.ts'
import {
  type FoundTold,
  foundHeading,
  foundHomeText,
  foundToolsText,
  nothingFoundText,
} from '../../words/found-text.ts'
import { containerPlace } from '../../words/places.ts'
import type { Screen } from '../navigation.ts'
import { BACK, type Choice, choicesOf, goTo, type Page, rowsOf } from '../page.ts'
import { type Line, line, strong } from '../text/line.ts'
import { bulleted, groups, indented, numbered } from './rows.ts'
import type { Scene } from './scene.ts'

type Found = Extract<Screen, { at: 'found' }>['found']
type Home = ReturnType<typeof foundView>['homes'][number]

const SHOWN = 40

/** Where something that turned up may belong: choosing a home writes what records it, or goes to the count. */
export function foundPage({ session, width }: Scene, found: Found): Page {
  const view = foundView(session, found)
  const state = session.stateNow()
  const choices = new Map<number, Choice>()
  const rows = view.homes.slice(0, SHOWN).flatMap((home, index): Line[] => {
    const told = foundHomeText(state, view, home)
    const choice = choiceOf(home, told)
    if (choice) choices.set(index + 1, choice)
    return [
      ...numbered(index + 1, told.what, width),
      ...indented(told.why, width),
      ...told.acts.flatMap((act) => bulleted(act, width)),
    ]
  })
  const tools = foundToolsText(state, view).flatMap((text) => indented(text, width))
  const nothing = view.homes.length > 0 ? [] : nothingFoundText(view).flatMap((text) => indented(text, width))
  return {
    title: line(strong('FOUND'), `  ${view.homes.length === 0 ? view.words : foundHeading(view)}`),
    top: [],
    rows: rowsOf(groups(tools, rows, nothing)),
    enter: BACK,
    choice: choicesOf(choices),
    large: null,
  }
}

/** A count goes to its screen, where the record keeps its number to itself; else the first words to type are written. */
function choiceOf({ standing, count }: Home, { acts }: FoundTold): Choice | null {
  const words = acts.flatMap((act) => /"([^"]*)"/.exec(act)?.[1] ?? [])[0]
  if (words === undefined) return null
  const container = count.lies
    .map(({ place }) => containerPlace(place)?.container)
    .find((no) => no !== undefined)
  if (standing !== 'missing' && container !== undefined && words.startsWith(`count ${container}`))
    return goTo(`count container ${container}`, { at: 'count', container, given: [] })
  return { says: words, act: { do: 'write', before: words.replace(/\.\.\.$/, '') } }
}
