import type { EntryBody } from '../../../src/journal/entry.ts'
import type { Session } from '../../../src/session/session.ts'
import type { Command } from '../../../src/ui/act.ts'

/** Something that is to be recorded: what is sent, and the entry or the refusal that it comes to. */
export class Aim {
  readonly commands: readonly Command[]
  readonly #session: Session
  readonly #told: string
  #comesTo: string | null = null

  constructor(session: Session, commands: readonly Command[]) {
    this.#session = session
    this.commands = commands
    this.#told = JSON.stringify(commands)
  }

  get comesTo(): string {
    this.#comesTo ??= cameTo(this.#session, this.commands)
    return this.#comesTo
  }

  get isRefused(): boolean {
    return this.comesTo.startsWith('[{"ok":false')
  }

  /** Whether commands would leave the very same in the record: the same entry, or the same refusal. */
  isMetBy(commands: readonly Command[]): boolean {
    if (commands.length !== this.commands.length || commands[0]?.do !== this.commands[0]?.do) return false
    return JSON.stringify(commands) === this.#told || cameTo(this.#session, commands) === this.comesTo
  }
}

/** Of several commands only the first can be foreseen: the others have to be the same word for word. */
function cameTo(session: Session, [first, ...more]: readonly Command[]): string {
  const decision = first ? session.foresee(first) : null
  return JSON.stringify([decision?.ok ? withoutRemark(decision.body) : decision, more])
}

/** A remark that nobody has to make is no part of what was done. */
function withoutRemark(body: EntryBody): EntryBody {
  if (body.type === 'checks-done') return { ...body, says: undefined }
  return body.type === 'build-done' ? { ...body, result: undefined } : body
}
