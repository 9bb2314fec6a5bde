import { type Choice, goTo } from '../../page.ts'
import { type Line, line, padded, strong, widthOf, wrap } from '../../text/line.ts'
import type { HelpItem } from './help-items.ts'

/** The widest word, and a space. */
const WORD_WIDTH = 17
const NUMBER_WIDTH = 5

/** One row of an item: its number where there is something to try, its word, and as much of what it does as fits. */
export function itemRows({ words: [word], says }: HelpItem, no: number | null, width: number): Line[] {
  const left = NUMBER_WIDTH + WORD_WIDTH
  const label = strong(`${no ?? ''}`.padStart(3).padEnd(NUMBER_WIDTH))
  const row = line(label, padded(line(strong(word)), WORD_WIDTH), inBrief(says, width - left))
  return wrap(row, width, left)
}

/** To the page of a word. */
export function toItem({ words: [word], says }: HelpItem): Choice {
  return goTo(`${word}: ${says}`, { at: 'help', about: word })
}

/** As many of a text's clauses as have room; never less than the first. */
function inBrief(text: string, room: number): string {
  const clauses = text.match(/.+?(?:[.:;](?= )|$)/gs) ?? [text]
  let brief = clauses[0] ?? ''
  for (const clause of clauses.slice(1)) {
    if (widthOf(brief + clause) > room + 1) break
    brief += clause
  }
  return brief.replace(/[.:;]$/, '')
}
