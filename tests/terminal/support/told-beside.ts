import { readArguments } from '../../../src/cli/arguments.ts'
import { Desk } from '../../../src/cli/desk.ts'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import type { Result } from '../../../src/cli/result.ts'
import { runFile } from '../../../src/cli/run-file.ts'
import type { Session } from '../../../src/session/session.ts'
import { homeForTest } from './putback-terminal.ts'

export type Entry = ReturnType<Session['entries']>[number]
export type State = Session['state']

/** The same job told to the command line, line by line: what the screens must come to. */
export class ToldBeside {
  readonly #desk: Desk
  /** How many lines were told. */
  told = 0

  constructor(home = homeForTest()) {
    const { options } = readArguments([]) as { options: Desk['options'] }
    this.#desk = new Desk(new DiskShelf(home), { options, cwd: home, colour: false })
  }

  /** What the command line says to a line of the file. */
  tell(line: string): Result {
    const told: Result[] = []
    const { failure } = runFile(this.#desk, line, { name: 'the job', each: (result) => told.push(result) })
    if (failure) throw new Error(`the command line does not take "${line}": ${failure.told.what}`)
    const [result] = told
    if (!result) throw new Error(`"${line}" is no line of a job`)
    this.told += 1
    return result
  }

  get session(): Session {
    const open = this.#desk.current()
    if (!open.ok) throw new Error(open.told.what)
    return open.session
  }

  get state(): State {
    return this.session.state
  }
}

/** What an entry says, without when it was written and by whom. */
export function factsOf(entry: Entry): Record<string, unknown> {
  const { at: _, id: __, by: ___, ...facts } = entry as Entry & { by?: string }
  return facts
}
