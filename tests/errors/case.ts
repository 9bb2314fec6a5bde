import type { Command } from '../../src/journal/command.ts'
import type { EntryBody } from '../../src/journal/entry.ts'
import type { Refusal } from '../../src/journal/refusal.ts'

/** A story that is accepted, the command that is not, and every word that a person reads then. */
export interface Case {
  given: Command[]
  /** An entry written after that, for what would take thousands of commands. */
  and?: EntryBody
  when: Command
  says: string[]
}

/** A code that no command leads to today: a second lock behind one that holds. Its words are kept right all the same. */
export interface Unreachable {
  given: Command[]
  unreachable: string
  refusal: Refusal
  says: string[]
}

export type Cases = (Case | Unreachable)[]
