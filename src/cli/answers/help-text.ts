import { findVerb } from '../../lines/read-line.ts'
import { TOPICS, type Verb } from '../../lines/verb.ts'
import { verbs } from '../../lines/verbs.ts'
import { PROGRAM_COMMANDS } from '../command-table.ts'
import { USAGE } from '../usage.ts'

/** All that can be written, or what can be written with one word; null for a word that is none. */
export function helpText(about: string | null): string[] | null {
  if (about === null) return [...USAGE.split('\n'), '', ...everything()]
  const word = about.toLowerCase()
  const command = PROGRAM_COMMANDS.find((each) => each.word === word || each.word.split(' ')[0] === word)
  const verb = findVerb(word)?.verb
  const isTopic = verbs.some(({ topic }) => topic === word)
  if (isTopic) return verbs.filter(({ topic }) => topic === word).flatMap(inShort)
  const parts = [...(verb ? [whole(verb)] : []), ...(command ? [whole(command)] : [])]
  return parts.length === 0 ? null : parts.flatMap((part, index) => (index === 0 ? part : ['', ...part]))
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

function inShort({ forms, says }: Verb): string[] {
  return [...forms.map((form) => `  ${form}`), `      ${says}`]
}

function whole({
  forms,
  says,
  examples,
}: Pick<Verb, 'says'> & { forms: readonly string[]; examples: readonly string[] }): string[] {
  return [...forms, `    ${says}`, ...examples.map((example) => `    putback ${forShell(example)}`)]
}

/** Signs that a shell would take for its own keep the line in quotes. */
function forShell(example: string): string {
  return /[;<>|&*?'$()]/.test(example) ? `"${example}"` : example
}
