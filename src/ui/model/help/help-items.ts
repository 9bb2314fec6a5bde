import { TOPICS } from '../../../lines/verb.ts'
import { verbs } from '../../../lines/verbs.ts'
import { KEYS, type Key, SCREEN_WORDS, SCREENS } from '../../keys.ts'

/** A key or a word, with what it does and the lines that can be tried with it. */
export interface HelpItem {
  /** What is typed or pressed; the usual way first, by which it is known. */
  words: readonly [string, ...string[]]
  topic: string
  says: string
  /** How it is written. Capitals stand for the user's own words. */
  forms: readonly string[]
  examples: readonly string[]
}

export interface HelpGroup {
  title: string
  items: readonly HelpItem[]
}

const KEY_ITEMS = KEYS.map((key) => itemOf(key, 'keys'))

const SCREEN_ITEMS = SCREENS.map(({ digit, name, says }) =>
  itemOf({ words: [`.${digit}`], says: `${name}: ${says}`, lines: [`.${digit}`] }, 'screens'),
)

const SCREEN_WORD_ITEMS = SCREEN_WORDS.map((word) => itemOf(word, 'words of the screens'))

const VERB_ITEMS = verbs.map(verbItem)

/** All there is, in the order in which it is shown. */
export const HELP_GROUPS: readonly HelpGroup[] = [
  { title: 'KEYS', items: KEY_ITEMS },
  { title: 'SCREENS', items: SCREEN_ITEMS },
  { title: 'WORDS OF THE SCREENS', items: SCREEN_WORD_ITEMS },
  ...TOPICS.map((topic) => ({
    title: topic.toUpperCase(),
    items: VERB_ITEMS.filter((item) => item.topic === topic),
  })),
]

/** The same, each word once: what a word means alone on the screens is told with the word. */
export const HELP_ITEMS: readonly HelpItem[] = [
  ...VERB_ITEMS,
  ...KEY_ITEMS,
  ...SCREEN_ITEMS,
  ...SCREEN_WORD_ITEMS.filter(({ words: [word] }) => !VERB_ITEMS.some((verb) => verb.words[0] === word)),
]

function itemOf({ words, says, lines = [] }: Key, topic: string): HelpItem {
  return { words, topic, says, forms: lines, examples: [] }
}

function verbItem({ words, topic, says, forms, examples }: (typeof verbs)[number]): HelpItem {
  const [first = '', ...others] = words
  const alone = SCREEN_WORDS.find((word) => word.words[0] === first)
  return {
    words: [first, ...others],
    topic,
    says: alone ? `${says} Alone, on the screens: ${alone.says}.` : says,
    forms: alone ? [first, ...forms] : forms,
    examples: examples.filter((example) => !forms.includes(example)),
  }
}
