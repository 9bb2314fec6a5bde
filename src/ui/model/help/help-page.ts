import type { ScreenName } from '../../navigation.ts'
import { BACK, type Choice, choicesOf, type Page, rowsOf } from '../../page.ts'
import { type Line, line, strong } from '../../text/line.ts'
import { groups, headed, indented } from '../rows.ts'
import type { Hall, Scene } from '../scene.ts'
import { HELP_GROUPS, type HelpItem } from './help-items.ts'
import { itemRows, toItem } from './help-rows.ts'
import { type HelpScreen, helpShown, wordsInLine } from './help-shown.ts'
import { screenPurpose } from './screen-purpose.ts'
import { wordPage } from './word-page.ts'

/** Every key and every word; those that answer to what is typed or was looked for; or one of them. */
export function helpPage(scene: Hall | Scene, screen: HelpScreen, typed: string): Page {
  const shown = helpShown(screen, typed)
  if (shown.kind === 'item') return wordPage(scene, shown.item)
  const list = numberedList(scene.width)
  const { title, rows } =
    shown.kind === 'all'
      ? { title: 'all keys and words', rows: everything(scene.width, list, screen.from) }
      : { title: titleOf(shown), rows: found(shown.items, list, scene.width) }
  return {
    title: line(strong('HELP'), `  ${title}`),
    top: [],
    rows: rowsOf(rows),
    isNarrowed: wordsInLine(typed) !== null,
    enter: BACK,
    choice: choicesOf(list.choices),
    large: null,
  }
}

function titleOf({ words, items, isNear }: { words: string; items: readonly HelpItem[]; isNear: boolean }) {
  if (!isNear) return `${items.length} for "${words}"${items.length > 1 ? ', best first' : ''}`
  return items.length > 0 ? `nothing for "${words}"; near it are` : `nothing for "${words}"`
}

function found(items: readonly HelpItem[], list: NumberedList, width: number): Line[] {
  if (items.length > 0) return items.flatMap(list.rowsOf)
  return indented('No key and no word is anything like it. Try another word for what you want to do.', width)
}

interface NumberedList {
  choices: Map<number, Choice>
  rowsOf(item: HelpItem): Line[]
}

/** Rows one after the other, numbered where there is something to try. */
function numberedList(width: number): NumberedList {
  const choices = new Map<number, Choice>()
  const rowsOfItem = (item: HelpItem): Line[] => {
    if (item.forms.length === 0) return itemRows(item, null, width)
    choices.set(choices.size + 1, toItem(item))
    return itemRows(item, choices.size, width)
  }
  return { choices, rowsOf: rowsOfItem }
}

const HOW_TO_SEARCH = 'Type what you look for, as torque or lost bolt. A number shows more.'

function everything(
  width: number,
  { rowsOf: rowsOfItem }: NumberedList,
  from: ScreenName | undefined,
): Line[] {
  return groups(
    [
      ...(from === undefined ? [] : indented(`You came from ${screenPurpose(from)}.`, width)),
      ...indented(HOW_TO_SEARCH, width),
    ],
    ...HELP_GROUPS.map(({ title, items }) => headed(title, items.flatMap(rowsOfItem))),
  )
}
