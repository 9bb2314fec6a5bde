import { answersTo, type HelpScreen, helpShown, wordsInLine } from '../model/help/help-shown.ts'
import { itemNamed, lookUp } from '../model/help/look-up.ts'
import { act, go, type Meaning, no } from './meaning.ts'

/**
 * What a line means on the help page: a whole command what it means elsewhere (`meant`), other words look for what
 * answers to them. A word alone that would write into the record is shown first, and done where it is written again.
 */
export function readHelp(text: string, screen: HelpScreen, meant: Meaning): Meaning {
  if (text.startsWith('?')) return search(text.slice(1).trim(), screen)
  if (isDone(text, screen, meant)) return meant
  const words = wordsInLine(text)
  if (words === null) return meant
  const found = answersTo(words)
  if (found.kind === 'item' || /^\d/.test(text)) return meant
  if (found.items.length === 0)
    return no(
      `No key and no word is anything like "${words}".`,
      'Try another word for it; Esc clears the line.',
    )
  return search(words, screen)
}

/** Whether a line is done here as it would be elsewhere. */
function isDone(text: string, screen: HelpScreen, meant: Meaning): boolean {
  if (meant.kind !== 'act') return false
  const { act } = meant
  if (act.do === 'go' || act.do === 'turn' || act.do === 'leave') return true
  const item = itemNamed(text)
  if (!item) return true
  const shown = helpShown(screen, '')
  return shown.kind === 'item' && shown.item === item
}

/** To all that answers to the words; straight to the page of the only one. */
function search(words: string, screen: HelpScreen): Meaning {
  const { from } = screen
  if (words === '') return go('all keys and words', { at: 'help', about: null, from })
  const { hits } = lookUp(words)
  const [only] = hits
  if (only && hits.length === 1)
    return go(`how "${only.words[0]}" is written`, { at: 'help', about: only.words[0], from })
  const says =
    hits.length === 0 ? `what is near "${words}"` : `${hits.length} for "${words}", to be chosen by number`
  const isList = helpShown(screen, '').kind === 'some'
  return act({ do: isList ? 'turn' : 'go', to: { at: 'help', about: words, isList: true, from } }, says)
}
