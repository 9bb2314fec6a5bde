import { singular } from './nouns.ts'

/** A name in the singular, word by word, and in lower case: `cam cap` for `Cam caps`. What comes to the same is one name. */
export function inSingular(name: string): string {
  return name.split(' ').map(singular).join(' ')
}

/** What of a text can be compared with another: its words in the singular and in lower case, without empty ones. */
export function wordsOf(text: string, empty: ReadonlySet<string> = new Set()): string[] {
  return text
    .split(/[\s,/:]+/u)
    .map(singular)
    .filter((word) => word !== '' && !empty.has(word))
}
