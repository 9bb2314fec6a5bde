import type { Command } from '../../src/journal/command.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import { type Entry, type EntryBody, parseEntry } from '../../src/journal/entry.ts'
import { fold, foldOn } from '../../src/journal/fold.ts'
import type { Refusal } from '../../src/journal/refusal.ts'
import type { State } from '../../src/journal/state.ts'
import { groupedCode, labelCode } from '../../src/label/code.ts'
import type { LabelCode } from '../../src/words/leftovers.ts'
import { refusalText } from '../../src/words/refusals.ts'
import type { Told } from '../../src/words/told.ts'

export interface Played {
  state: State
  entries: Entry[]
}

/** A job told by its commands. Every one must be accepted; each entry goes through JSON and its schema. */
export function play(commands: readonly Command[], and?: EntryBody): Played {
  const played: Played = { state: fold([]), entries: [] }
  for (const command of commands) {
    const decision = decide(played.state, command)
    if (!decision.ok) throw new Error(`${command.do}: ${JSON.stringify(decision.refusal)}`)
    write(played, decision.body)
  }
  if (and) write(played, and)
  return played
}

function write(played: Played, body: EntryBody): void {
  const n = played.entries.length + 1
  const at = `2026-05-02T08:${String(n % 60).padStart(2, '0')}:00.000Z`
  const entry = parseEntry(JSON.parse(JSON.stringify({ v: 1, n, at, id: `e${n}`, ...body })))
  played.entries.push(entry)
  played.state = foldOn(played.state, played.entries, [entry])
}

/** The refusal that a command meets after a story. */
export function refused(state: State, command: Command): Refusal {
  const decision = decide(state, command)
  if (decision.ok) throw new Error(`not refused: ${JSON.stringify(decision.body)}`)
  return decision.refusal
}

/** What a person reads of a refusal: what, the lines below it, and what to do. */
export function says(state: State, refusal: Refusal): string[] {
  return shown(refusalText(state, refusal, codeOf(state)))
}

export function shown({ what, lines, cure }: Told): string[] {
  return [what, ...lines.map((line) => `  ${line}`), `> ${cure}`]
}

/** The label codes of a job, in groups as they are printed. */
export function codeOf(state: State): LabelCode {
  return (container) => groupedCode(labelCode(state.job.no, container))
}
