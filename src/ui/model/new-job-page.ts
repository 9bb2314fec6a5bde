import { plainText } from '../../label/plain-text.ts'
import type { Told } from '../../words/told.ts'
import { type Choice, NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { line, strong } from '../text/line.ts'
import { groups, headed, indented } from './rows.ts'
import type { Hall } from './scene.ts'

/** Two short questions make a job: what it is called, and which machine it is. */
export function newJobPage({ width }: Hall, name: string | null): Page {
  const question = name === null ? 'WHAT DO YOU CALL THE JOB?' : 'WHICH MACHINE IS IT?'
  const example =
    name === null
      ? 'For example: blue twin top end'
      : 'For example: the blue twin, engine number 42. Or Enter alone.'
  return {
    title: line(strong('A NEW JOB'), name === null ? '' : `  ${name}`),
    top: [],
    rows: rowsOf(
      groups(headed(question, indented(example, width)), indented('Everything else can come later.', width)),
    ),
    enter:
      name === null
        ? {
            says: 'nothing: a job needs a name',
            act: {
              do: 'say',
              what: 'A job needs a name.',
              cure: 'Type it, then Enter. Backspace goes back.',
            },
          }
        : newJob(name, ''),
    choice: NO_CHOICES,
    question: { take: (text) => answer(name, plainText(text)) },
    large: null,
  }
}

function answer(name: string | null, text: string): Choice | { cannot: Told } {
  if (!/[\p{L}\p{N}]/u.test(text)) {
    const what = `${name === null ? 'A job' : 'A machine'} goes by a name with a letter or a number in it.`
    return { cannot: { what, lines: [], cure: 'Type one, then Enter. Backspace goes back.' } }
  }
  if (name === null)
    return { says: `call it ${text}`, act: { do: 'turn', to: { at: 'new-job', name: text } } }
  return newJob(name, text)
}

function newJob(name: string, machine: string): Choice {
  return { says: `begin ${name}`, act: { do: 'new-job', job: { name, machine, units: 'metric' } } }
}
