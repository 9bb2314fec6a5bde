import { nearestVerb, verbNamed } from '../../lines/read-line.ts'
import { verbs } from '../../lines/verbs.ts'
import { KEYS, SCREEN_WORDS } from '../keys.ts'
import { BACK, NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { type Line, line, strong, wrap } from '../text/line.ts'
import { groups, headed, indented } from './rows.ts'

type Verb = (typeof verbs)[number]

/** Every key and every word; or one word with its forms and examples. */
export function helpPage(width: number, about: string | null): Page {
  const found = about === null ? null : verbNamed(about)
  return {
    title: line(strong('HELP'), about === null ? '' : `  ${about}`),
    top: [],
    rows: rowsOf(
      found
        ? aboutVerb(found.verb, width)
        : groups(about === null ? [] : unknownWord(about, width), everything(width)),
    ),
    enter: BACK,
    choice: NO_CHOICES,
    large: null,
  }
}

function aboutVerb({ says, forms, examples }: Verb, width: number): Line[] {
  return groups(
    headed('WHAT IT DOES', indented([{ text: says, tone: 'plain' }], width)),
    headed(
      'HOW IT IS WRITTEN',
      forms.flatMap((form) => indented(line(strong(form)), width)),
    ),
    headed(
      'FOR EXAMPLE',
      examples.flatMap((example) => indented(line(example), width)),
    ),
  )
}

function unknownWord(about: string, width: number): Line[] {
  const nearest = nearestVerb(about)
  const perhaps = nearest === null ? '' : ` Perhaps "? ${nearest}".`
  return indented(`There is no word "${about}" to begin a line with.${perhaps} This is all there is:`, width)
}

const KEY_WIDTH = 16

function everything(width: number): Line[] {
  const topics = [...new Set(verbs.map(({ topic }) => topic))]
  return groups(
    headed(
      'KEYS',
      KEYS.flatMap(({ key, says }) => pair(key, says, width)),
    ),
    headed(
      'WORDS OF THE SCREENS',
      SCREEN_WORDS.flatMap(({ word, says }) => pair(word, says, width)),
    ),
    ...topics.map((topic) =>
      headed(
        topic.toUpperCase(),
        verbs
          .filter((verb) => verb.topic === topic)
          .flatMap(({ forms: [form], says }) => [
            ...indented(line(strong(form)), width),
            ...wrap(line(`       ${says}`), width, 7),
          ]),
      ),
    ),
  )
}

function pair(key: string, says: string, width: number): Line[] {
  return wrap(line('     ', strong(key.padEnd(KEY_WIDTH)), says), width, 5 + KEY_WIDTH)
}
