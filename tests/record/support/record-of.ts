import { asBuilt } from '../../../src/record/as-built.ts'
import { asBuiltText } from '../../../src/record/as-built-text.ts'
import type { Session } from '../../../src/session/session.ts'

/** The record of a job, each statement in one row unless a width is given; times as they were written. */
export function recordOf(session: Session, width = Number.POSITIVE_INFINITY): string[] {
  return asBuiltText(session.state, asBuilt(session), {
    when: (at) => at.slice(0, 16).replace('T', ' '),
    zone: 'UTC',
    code: (no) => `code ${no}`,
    width,
  })
}

/** The rows of one section, its heading left out. */
export function sectionOf(rows: readonly string[], title: string): string[] {
  const at = rows.indexOf(title)
  if (at < 0) throw new Error(`no section ${title}`)
  const rest = rows.slice(at + 2)
  const end = rest.findIndex((row, index) => row === '' && /^-+$/.test(rest[index + 2] ?? ''))
  return rest.slice(0, end < 0 ? undefined : end)
}

/** The rows of one step, its own row left out. */
export function stepOf(rows: readonly string[], no: number): string[] {
  const steps = sectionOf(rows, 'STEPS IN THE ORDER OF THE WAY BACK')
  const at = steps.findIndex((row) => row.startsWith(`step ${no}, `))
  const rest = steps.slice(at + 1)
  const end = rest.indexOf('')
  return at < 0 ? [] : rest.slice(0, end < 0 ? undefined : end)
}

/** What stands in a step under a title. */
export function partOf(step: readonly string[], title: string): string[] {
  const at = step.indexOf(`  ${title}:`)
  const rest = step.slice(at + 1)
  const end = rest.findIndex((row) => /^ {2}\S/.test(row))
  return at < 0 ? [] : rest.slice(0, end < 0 ? undefined : end)
}

/** A row without its entry, its time and who wrote it. */
export function factOf(row: string): string {
  return row.replace(/^ +\d+ {2}\d{4}-\d\d-\d\d \d\d:\d\d {2}(?:\[[^\]]*\] )?/, '')
}

/** The numbers of the entries that rows are told from. */
export function entriesTold(rows: readonly string[]): Set<number> {
  return new Set(rows.flatMap((row) => /^ +(\d+) {2}\d{4}-\d\d-\d\d /.exec(row)?.[1] ?? []).map(Number))
}
