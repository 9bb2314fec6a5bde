import type { Refusal } from '../journal/refusal.ts'
import type { State } from '../journal/state.ts'
import { groupedCode } from '../label/code.ts'
import type { ErrandOutcome } from '../session/errands.ts'
import { codeOf } from '../session/scan.ts'
import type { Entry } from '../session/stored-entry.ts'
import { refusalText } from '../words/refusals.ts'
import { type Trouble, troubleText } from '../words/storage-troubles.ts'
import type { Told } from '../words/told.ts'
import { troubleOfError } from '../words/trouble-of.ts'

export type Failed = Extract<ErrandOutcome, { ok: false }>

/** It cannot be as asked. */
export function refusedWith(code: string, told: Told): Failed {
  return { ok: false, exit: 'refused', code, told, entries: [] }
}

/** A command of the errand was refused, after some entries. */
export function failedByRefusal(state: State, refusal: Refusal, entries: readonly Entry[]): Failed {
  const told = refusalText(state, refusal, (container) => groupedCode(codeOf(state, container)))
  return {
    ok: false,
    exit: 'refused',
    code: refusal.code === 'law' ? refusal.violation.law : refusal.code,
    told: { ...told, lines: [...told.lines, ...standing(entries)] },
    entries,
  }
}

/** The disk or the record keeps it from being recorded. */
export function failedByTrouble(trouble: Trouble, entries: readonly Entry[]): Failed {
  const told = troubleText(trouble)
  return {
    ok: false,
    exit: 'not-recorded',
    code: 'code' in trouble ? trouble.code : trouble.kind,
    told: { ...told, lines: [...told.lines, ...standing(entries)] },
    entries,
  }
}

/** The same for an error; one that is a fault of ours is thrown on. */
export function failedByError(error: unknown, path: string, entries: readonly Entry[]): Failed {
  const trouble = troubleOfError(error, path)
  if (trouble === null) throw error
  return failedByTrouble(trouble, entries)
}

function standing(entries: readonly Entry[]): string[] {
  const count = entries.reduce(
    (sum, entry) => sum + (entry.type === 'pictures-added' ? entry.pictures.length : 0),
    0,
  )
  return count === 0
    ? []
    : [`${count} pictures were recorded before; the import can be run again for the rest.`]
}
