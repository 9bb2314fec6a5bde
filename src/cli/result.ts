import type { Heed } from '../session/heeds.ts'
import type { Entry } from '../session/stored-entry.ts'
import type { Told } from '../words/told.ts'
import type { ExitCode } from './exit-codes.ts'

/** What came of one command: the same for a person, a script and a test. */
export type Result = Success | Failure

export interface Success {
  ok: true
  /** For a person, line by line. */
  text: string[]
  /** A symbol drawn for the terminal, which stands above the text and is left out of JSON. */
  symbol?: string[] | undefined
  /** A file for standard output, which then takes nothing else. */
  bytes?: Uint8Array | undefined
  /** What was recorded, where something was. */
  entries?: readonly Entry[]
  /** What is worth a look because of what was recorded: verdicts, what to set, what to ask the manual. */
  heeds?: readonly Heed[]
  /** The facts that a question was answered with. */
  answer?: unknown
}

export interface Failure {
  ok: false
  exit: Exclude<ExitCode, 0>
  /** The closed code of what went wrong: of a refusal, a broken law, a misreading, a trouble with the disk. */
  code: string
  told: Told
  /** What was recorded before it went wrong, and the words for that. */
  entries?: readonly Entry[]
  text?: string[]
  /** The error that it was told from, where it was one: for those who have to throw it on. */
  cause?: Error
  /** The facts under their own name. */
  facts?:
    | { refusal: unknown }
    | { misreading: unknown }
    | { which: unknown }
    | { trouble: unknown }
    | { doctor: unknown }
}

/** A wrong use, told in words. */
export function wrongUse(code: string, told: Told, exit: Failure['exit'] = 2): Failure {
  return { ok: false, exit, code, told }
}
