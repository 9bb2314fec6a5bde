import { verbNamed } from '../../lines/read-line.ts'
import { TOPICS } from '../../lines/verb.ts'
import { verbs } from '../../lines/verbs.ts'
import { PROGRAM_COMMANDS } from '../command-table.ts'
import { USAGE } from '../usage.ts'

interface Writable {
  forms: readonly string[]
  says: string
  examples: readonly string[]
}

/** All that can be written, or what can be written with one word or on one topic; null for a word that is none. */
export function helpAnswer(about: string | null): { text: string[]; answer: unknown } | null {
  if (about === null) {
    return {
      text: [...USAGE.split('\n'), '', ...everything()],
      answer: [...PROGRAM_COMMANDS, ...verbs].map(facts),
    }
  }
  const word = about.toLowerCase()
  const onTopic = verbs.filter(({ topic }) => topic === word)
  if (onTopic.length > 0) return { text: onTopic.flatMap(inShort), answer: onTopic.map(facts) }
  const commands = PROGRAM_COMMANDS.filter((each) => each.word === word || each.word.split(' ')[0] === word)
  const verb = verbNamed(word)?.verb
  const found: Writable[] = verb ? [verb, ...commands] : commands
  if (found.length === 0) return null
  return {
    text: found.flatMap((each, index) => [...(index === 0 ? [] : ['']), ...whole(each)]),
    answer: found.map(facts),
  }
}

function facts({ forms, says, examples }: Writable): Writable {
  return { forms, says, examples }
}

function everything(): string[] {
  const own = PROGRAM_COMMANDS.flatMap(({ forms, says }) => [
    ...forms.map((form) => `  ${form}`),
    `      ${says}`,
  ])
  const lines = TOPICS.flatMap((topic) => [
    '',
    `${topic.charAt(0).toUpperCase()}${topic.slice(1)}:`,
    ...verbs.filter((verb) => verb.topic === topic).flatMap(inShort),
  ])
  return ['Jobs:', ...own, ...lines]
}

function inShort({ forms, says }: Writable): string[] {
  return [...forms.map((form) => `  ${form}`), `      ${says}`]
}

function whole({ forms, says, examples }: Writable): string[] {
  return [...forms, `    ${says}`, ...examples.map((example) => `    putback ${forShell(example)}`)]
}

/** Signs that a shell would take for its own keep the line in quotes. */
function forShell(example: string): string {
  return /[;<>|&*?'$()]/.test(example) ? `"${example}"` : example
}
