import type { Session } from '../../session/session.ts'
import { isSearch } from '../typed/search-words.ts'
import { perVersion } from './scene.ts'

/** What a list is narrowed by: the words in the line while they are typed, else those that were entered. */
export function wordsNow(typed: string, kept: string): string {
  return (isSearch(typed) ? typed : kept).trim()
}

interface Searched<Hit> {
  hit: Hit
  /** In small letters. */
  text: string
  /** Answers only to the whole of it: `7` is not every seventh piece. */
  id: string
}

/**
 * What answers to all of the words, in whatever order. The texts are made once for a state of the record; words that
 * grow by a letter are looked for among what answered before.
 */
export function search<Hit>(session: Session, words: string, list: SearchedList<Hit>): readonly Hit[] {
  const last = perVersion(session, `searched ${list.name}`, () => {
    const all = list
      .all()
      .map((hit): Searched<Hit> => ({ hit, text: list.textOf(hit).toLowerCase(), id: list.idOf(hit) }))
    return { words: '', all, found: all }
  })
  const wanted = words.toLowerCase()
  if (wanted !== last.words) {
    const each = wanted.split(/\s+/)
    // A word that becomes an id may answer where its beginning did not.
    const isLonger = wanted.startsWith(last.words) && !each.some((word) => list.isId(word))
    const among = isLonger ? last.found : last.all
    last.found = among.filter(({ text, id }) => each.every((word) => text.includes(word) || id === word))
    last.words = wanted
  }
  return last.found.map(({ hit }) => hit)
}

interface SearchedList<Hit> {
  name: string
  all(): Hit[]
  textOf(hit: Hit): string
  idOf(hit: Hit): string
  isId(word: string): boolean
}
