import { findVerb } from '../../../lines/read-line.ts'
import type { Screen } from '../../navigation.ts'
import type { HelpItem } from './help-items.ts'
import { itemNamed, lookUp } from './look-up.ts'

export type HelpScreen = Extract<Screen, { at: 'help' }>

export type HelpShown =
  | { kind: 'all' }
  | { kind: 'item'; item: HelpItem }
  /** `isNear`: nothing answers to the words, and these come nearest. */
  | { kind: 'some'; words: string; items: readonly HelpItem[]; isNear: boolean }

/** What the help page shows: what it was asked for, or what answers to the words in the line. */
export function helpShown({ about, isList }: HelpScreen, typed: string): HelpShown {
  const words = wordsInLine(typed)
  const asked = about === null ? ALL : askedFor(about, isList === true)
  if (words === null) return asked
  // A line that begins with the word on the page is being written, not looked for.
  if (asked.kind === 'item' && isBeginning(words, asked.item)) return asked
  return answersTo(words)
}

/** The words in the line that look for something; null where it holds none. */
export function wordsInLine(typed: string): string | null {
  const words = typed.replace(/^\s*\?/, '').trim()
  return /\p{L}/u.test(words) ? words : null
}

/** What answers to words: several or none, or one word where they are a line that begins with it. */
export function answersTo(words: string): Exclude<HelpShown, { kind: 'all' }> {
  const found = findVerb(words)
  const item = found && itemNamed(found.word)
  // Nothing here has a number in it that anybody would look for.
  if (item && /\d/.test(found.rest)) return { kind: 'item', item }
  const { hits, near } = lookUp(words)
  if (hits.length > 0) return { kind: 'some', words, items: hits, isNear: false }
  return item ? { kind: 'item', item } : { kind: 'some', words, items: near, isNear: true }
}

const ALL: HelpShown = { kind: 'all' }

function askedFor(about: string, isList: boolean): HelpShown {
  const item = isList ? undefined : itemNamed(about)
  if (item) return { kind: 'item', item }
  const shown = answersTo(about)
  const [only, second] = shown.kind === 'some' && !shown.isNear ? shown.items : []
  return only && !second && !isList ? { kind: 'item', item: only } : shown
}

function isBeginning(line: string, { words }: HelpItem): boolean {
  const typed = line.toLowerCase()
  return words.some((word) => {
    const known = word.toLowerCase()
    return known.startsWith(typed) || (typed.startsWith(known) && /^[ :]/.test(typed.slice(known.length)))
  })
}
