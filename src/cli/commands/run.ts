import { resolve } from 'node:path'
import { counted } from '../../words/grammar.ts'
import { told } from '../../words/told.ts'
import type { Options } from '../arguments.ts'
import type { Desk } from '../desk.ts'
import type { Pending } from '../pending.ts'
import { MOST_RUN_BYTES, readRunFile } from '../read-run-file.ts'
import { type Result, wrongUse } from '../result.ts'
import { type Run, runFile } from '../run-file.ts'

/** `run FILE`: carries out a file of commands, and names the line that stopped it. `-` is standard input. */
export function run(
  desk: Desk,
  [file]: readonly string[],
  options: Options,
  errand: (pending: Pending) => Promise<Result>,
): Result | Promise<Result> {
  if (file === undefined) {
    return wrongUse(
      'missing',
      told('no file is named', '"putback run FILE", or "putback run -" for standard input'),
    )
  }
  const name = file === '-' ? 'standard input' : file
  let text: string
  try {
    text = readRunFile(file === '-' ? null : resolve(desk.cwd, file))
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown'
    if (code === 'EOVERFLOW') return tooLong(name)
    return wrongUse(
      'no-such-file',
      told(`the file '${name}' cannot be read: ${code}`, 'look at the name of the file'),
    )
  }
  const lines: string[] = []
  const each = (result: Result) => {
    if (result.ok) lines.push(...result.text)
  }
  const ran = runFile(desk, text, { name, until: options.until, each }, errand)
  const tell = (run: Run) => resultOf(run, name, lines)
  return ran instanceof Promise ? ran.then(tell) : tell(ran)
}

function tooLong(name: string): Result {
  return wrongUse(
    'file-too-long',
    told(
      `${name} is longer than ${MOST_RUN_BYTES / 1024 / 1024} MiB, so nothing of it was done`,
      'part it into several files, and run one after the other',
    ),
  )
}

function resultOf({ done, refused, failure }: Run, name: string, lines: string[]): Result {
  const summary = `${name}: ${counted(done, 'line')} done${refused === 0 ? '' : `, ${refused} refused as they should be`}`
  if (!failure) return { ok: true, text: [...lines, summary], answer: { done, refused } }
  const where = failure.line === 0 ? name : `${name}:${failure.line}`
  return {
    ...failure,
    told: { ...failure.told, what: `${where}: ${failure.told.what}` },
    text: [...lines, ...(failure.text ?? [])],
  }
}
