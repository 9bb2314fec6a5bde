import MiniSearch, { type SearchOptions } from 'minisearch'
import { HELP_ITEMS, type HelpItem } from './help-items.ts'
import { SAID_FOR } from './said-for.ts'

/** What answers to words, best first; what is near them where nothing does. */
export interface LookUp {
  hits: readonly HelpItem[]
  near: readonly HelpItem[]
}

/** Looks words up in everything that help knows: slips of the finger and words half typed find what was meant. */
export function lookUp(words: string): LookUp {
  const text = wordsOf(words)
  const named = HELP_ITEMS.filter((item) => item.words.some((word) => word.toLowerCase() === text))
  const said = HELP_ITEMS.filter(({ words: [word] }) => SAID_FOR[word]?.includes(text))
  // A key is known by its sign, and a sign is no word to search by.
  const found = /\p{L}/u.test(text) ? searched(text) : []
  const hits = [...new Set([...named, ...said, ...found])]
  return { hits, near: hits.length > 0 ? [] : nearTo(text) }
}

/** The item that is called so. */
export function itemNamed(words: string): HelpItem | undefined {
  const text = words.trim().toLowerCase()
  return HELP_ITEMS.find((item) => item.words.some((word) => word.toLowerCase() === text))
}

/** Words of a question that say nothing about what is looked for. */
const SMALL_WORDS = /^(?:how|do|does|i|a|an|the|is|are|my|can|what|it)$/

function wordsOf(text: string): string {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean)
  const telling = words.filter((word) => !SMALL_WORDS.test(word))
  return (telling.length > 0 ? telling : words).join(' ')
}

/** What has all of the words in it, or words that begin so; only where nothing has, what is nearly written so. */
function searched(text: string): HelpItem[] {
  const written = search(text, { combineWith: 'AND', fuzzy: false }, 0)
  return written.length > 0 ? written : search(text, { combineWith: 'AND' }, 0.2)
}

const MOST_NEAR = 5

/** Any of the words, with more slips than are forgiven otherwise. */
function nearTo(text: string): HelpItem[] {
  return search(text, { combineWith: 'OR', fuzzy: 0.5 }, 0.5).slice(0, MOST_NEAR)
}

/** What is found, as far as it is worth that share of the best: the rest is there by chance. */
function search(text: string, how: SearchOptions, leastShare: number): HelpItem[] {
  const found = index().search(text, how)
  const least = (found[0]?.score ?? 0) * leastShare
  return found.filter(({ score }) => score >= least).map(({ id }) => HELP_ITEMS[id] as HelpItem)
}

let made: MiniSearch | undefined

/** Made when somebody asks for help the first time. */
function index(): MiniSearch {
  if (made) return made
  made = new MiniSearch({
    fields: ['words', 'said', 'says', 'forms', 'topic', 'examples'],
    searchOptions: {
      boost: { words: 8, said: 5, says: 2 },
      prefix: true,
      // A short word with two slips is any word.
      fuzzy: (term) => (term.length < 3 ? false : term.length < 5 ? 1 : 2),
      weights: { prefix: 0.6, fuzzy: 0.35 },
    },
  })
  made.addAll(
    HELP_ITEMS.map(({ words, says, forms, topic, examples }, id) => ({
      id,
      words: words.join(' '),
      said: (SAID_FOR[words[0]] ?? []).join(' '),
      says,
      forms: forms.join(' '),
      topic,
      examples: examples.join(' '),
    })),
  )
  return made
}
