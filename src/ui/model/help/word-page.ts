import type { Act } from '../../act.ts'
import { BACK, type Choice, choicesOf, goTo, type Page, rowsOf } from '../../page.ts'
import { type Line, line, plain, strong } from '../../text/line.ts'
import { groups, headed, indented, numbered } from '../rows.ts'
import type { Hall, Scene } from '../scene.ts'
import type { HelpItem } from './help-items.ts'
import { lookUp } from './look-up.ts'

/** One word or key: what it does, and the lines that begin with it, to be tried by their numbers. */
export function wordPage(scene: Hall | Scene, { words, topic, says, forms, examples }: HelpItem): Page {
  const { width } = scene
  const [word, ...others] = words
  const choices = new Map<number, Choice>()
  const toTry = (text: string, write: Act): Line[] => {
    choices.set(choices.size + 1, { says: `write ${text}`, act: 'session' in scene ? write : NO_JOB })
    return numbered(choices.size, line(strong(text)), width)
  }
  const written = forms.flatMap((form) => toTry(form, beginning(form)))
  const shown = examples.flatMap((example) => toTry(example, whole(example)))
  return {
    title: line(strong('HELP'), '  ', strong(word), `  ${topic}`),
    top: [],
    rows: rowsOf(
      groups(
        headed('WHAT IT DOES', indented([plain(says)], width)),
        headed('HOW IT IS WRITTEN: a number begins the line', [
          ...written,
          ...(others.length > 0 ? indented(line('or ', strong(others.join(', '))), width) : []),
        ]),
        headed('FOR EXAMPLE: a number writes it', shown),
        moreRows(word, choices, width),
      ),
    ),
    enter: BACK,
    choice: choicesOf(choices),
    large: null,
  }
}

const NO_JOB: Act = { do: 'say', what: 'No job is open to write it in.', cure: 'Open one first: Backspace.' }

/** Where one came from before help: there the line is completed, beside what it is about. */
const BACK_THERE = { past: 'help' } as const

/** As much of a form as is written as it stands; the rest is asked for. */
function beginning(form: string): Act {
  const words = form.split(' ')
  const open = words.findIndex((word) => /[A-Z]{2}|^N\b|[[|]|\.\.\./.test(word))
  if (open < 0) return { do: 'write', before: form, ...BACK_THERE }
  const before = words.slice(0, open).map((word) => `${word} `)
  return { do: 'write', before: before.join(''), asks: `Complete it: ${form}`, ...BACK_THERE }
}

function whole(example: string): Act {
  const asks = 'An example: change it to what you mean, then Enter.'
  return { do: 'write', before: example, asks, ...BACK_THERE }
}

/** What else answers to the word. */
function moreRows(word: string, choices: Map<number, Choice>, width: number): Line[] {
  const more = lookUp(word).hits.length - 1
  if (more < 1) return []
  const no = choices.size + 1
  const choice = goTo(`${more} more for "${word}"`, { at: 'help', about: word, isList: true })
  choices.set(no, choice)
  return numbered(no, choice.says, width)
}
