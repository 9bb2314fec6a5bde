import { told } from '../words/told.ts'
import { type Arguments, readArguments } from './arguments.ts'
import type { Desk } from './desk.ts'
import { EXIT } from './exit-codes.ts'
import { isPending, type Pending } from './pending.ts'
import { perform } from './perform.ts'
import { type Failure, type Result, wrongUse } from './result.ts'
import { splitWords } from './split-words.ts'

export interface RunOptions {
  /** What to call the file where a line is named. */
  name: string
  /** The title of the section to stop before. */
  until?: string | undefined
  /** Told of each line when it is done. */
  each?: ((result: Result, line: string) => void) | undefined
}

/** How far a file ran: its lines carried out, and the failure that stopped it, if one did. */
export interface Run {
  done: number
  /** Lines that were refused as the file says they are. */
  refused: number
  failure: (Failure & { line: number }) | null
}

/**
 * Carries out a file of commands, one a line, until one fails. `#` begins a comment, `== TITLE` a section, and
 * `refused CODE: LINE` is a line that must be refused with that code: anything else stops the run.
 *
 * A file with errands needs `errand` to run them, and then takes its time.
 */
export function runFile(desk: Desk, text: string, options: RunOptions): Run
export function runFile(
  desk: Desk,
  text: string,
  options: RunOptions,
  errand: (pending: Pending) => Promise<Result>,
): Run | Promise<Run>
export function runFile(
  desk: Desk,
  text: string,
  options: RunOptions,
  errand?: (pending: Pending) => Promise<Result>,
): Run | Promise<Run> {
  const running = runLines(desk, text, options)
  let step = running.next()
  while (!step.done) {
    if (errand) return goOn(running, step.value, errand)
    step = running.next(notHere())
  }
  return step.value
}

async function goOn(
  running: Running,
  first: Pending,
  errand: (pending: Pending) => Promise<Result>,
): Promise<Run> {
  let step = running.next(await errand(first))
  while (!step.done) step = running.next(await errand(step.value))
  return step.value
}

/** Hands out each errand that it comes to, and goes on with what came of it. */
type Running = Generator<Pending, Run, Result>

function* runLines(desk: Desk, text: string, options: RunOptions): Running {
  const run: Run = { done: 0, refused: 0, failure: null }
  const lines = text.split(/\r\n|\n|\r/).map((raw) => raw.trim())
  const end =
    options.until === undefined ? lines.length : lines.findIndex((line) => isSection(line, options.until))
  // Looked for first: a slip in the title must not record what was to be left out.
  if (end < 0) {
    const what = told(
      `there is no section '${options.until}' in ${options.name}, so nothing was done`,
      'a section begins with "== TITLE"',
    )
    return { ...run, failure: { ...wrongUse('no-such-section', what), line: 0 } }
  }
  for (const [index, line] of lines.slice(0, end).entries()) {
    if (line === '' || line.startsWith('#') || line.startsWith('==')) continue
    const failure = yield* runLine(desk, line, run, options)
    if (failure) return { ...run, failure: { ...failure, line: index + 1 } }
  }
  return run
}

function isSection(line: string, title = ''): boolean {
  return /^==\s*(.*)$/.exec(line)?.[1]?.toLowerCase() === title.toLowerCase()
}

function* runLine(
  desk: Desk,
  line: string,
  run: Run,
  { each }: RunOptions,
): Generator<Pending, Failure | null, Result> {
  const [, code, refused] = /^refused ([a-z-]+): ?(.*)$/.exec(line) ?? []
  const performed = performWritten(desk, refused ?? line)
  const result = isPending(performed) ? yield performed : performed
  each?.(result, line)
  if (code === undefined) {
    if (!result.ok) return result
    run.done += 1
    return null
  }
  if (!result.ok && result.code === code) {
    run.refused += 1
    return null
  }
  const came = result.ok
    ? `it was done: ${result.text[0] ?? ''}`
    : `it was refused as ${result.code}: ${result.told.what}`
  return wrongUse(
    'not-refused-so',
    told(`this should be refused as ${code}, but ${came}`, 'change the line, or what the file says of it'),
    EXIT.refused,
  )
}

/** The program's own commands are split as a shell would; a line of the language is taken as it stands. */
function performWritten(desk: Desk, line: string): Result | Pending {
  const [, alone] = /^(run|demo|practice|restore)\b/i.exec(line) ?? []
  if (alone !== undefined) {
    return wrongUse(
      'not-in-a-file',
      told(`'${alone}' cannot stand in a file of commands`, `say "putback ${line}" on the command line`),
    )
  }
  if (
    !/^(?:new job|jobs|use|rename|archive|unarchive)\b/i.test(line) ||
    /^use again\b|^rename (?:step|job)\b/i.test(line)
  ) {
    return perform(desk, [line], desk.options)
  }
  const read: Arguments | { wrong: string } = readArguments(splitWords(line))
  if ('wrong' in read) return wrongUse('option', told(read.wrong, '"putback help" shows the options'))
  return perform(desk, read.words, read.options)
}

function notHere(): Failure {
  return wrongUse(
    'not-in-a-file',
    told('what is printed or imported cannot stand in this file', 'say it on the command line'),
  )
}
