import { expect } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import type { EntryType } from '../../src/journal/entry.ts'
import type { Refusal, RefusalCode } from '../../src/journal/refusal.ts'
import { openJob, record, type Told } from './record.ts'

export { openJob, record, stateText } from './record.ts'

/** A job that is open, with the commands carried out on it. */
export function given(...commands: Command[]) {
  return givenTold(record([openJob, ...commands]))
}

/** A computer with no job on it yet. */
export function givenNothing() {
  return givenTold(record([]))
}

function givenTold(told: Told) {
  return {
    ...told,
    /** Carries on: the same job with more done to it. */
    and: (...commands: Command[]) => givenTold(record(commands, told.entries)),
    when: (command: Command) => ({
      refuses: (code: RefusalCode, facts: Record<string, unknown> = {}): Refusal => {
        const decision = decide(told.state, command)
        if (decision.ok) throw new Error(`not refused: ${JSON.stringify(decision.body)}`)
        expect(decision.refusal).toMatchObject({ code, ...facts })
        return decision.refusal
      },
      makes: (type: EntryType, facts: Record<string, unknown> = {}): Told => {
        const decision = decide(told.state, command)
        if (!decision.ok) throw new Error(`refused: ${JSON.stringify(decision.refusal)}`)
        expect(decision.body).toMatchObject({ type, ...facts })
        return record([command], told.entries)
      },
    }),
  }
}
