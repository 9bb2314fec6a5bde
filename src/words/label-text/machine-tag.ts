import type { State } from '../../journal/state.ts'
import type { MachineTag } from '../../label/label-content.ts'
import type { Leftover } from '../../plan/leftovers.ts'
import type { Standing } from '../../session/label-facts.ts'
import { counted, singular } from '../grammar.ts'
import { jobLine } from './job-line.ts'
import { oneLine, oneLines } from './one-line.ts'

/**
 * Hangs on the machine. Its state is one of `NOT READY TO START`, `READY TO START` (cleared, nothing touched since),
 * `RUNNING IN` (started, checks still due) and `STARTED`.
 * @param at the date as it is shown
 * @param code the nine digits of the job itself
 */
export function machineTag(state: State, standing: Standing, at: string, code: string): MachineTag {
  const { tagState, reasons } = standingText(state, standing)
  return {
    kind: 'machine',
    name: 'machine tag',
    code,
    state: tagState,
    reasons: oneLines(reasons),
    machine: oneLine(state.job.machine),
    job: jobLine(state),
    date: oneLine(at),
  }
}

/** How the machine stands, and why: `14 pieces off`, `coolant drained`, `2 rags in it`. */
export function standingText(state: State, { leftovers }: Standing): { tagState: string; reasons: string[] } {
  if (leftovers.length > 0) return { tagState: 'NOT READY TO START', reasons: reasonsOf(state, leftovers) }
  if (state.started) {
    const due = state.closed ? [] : checksDue(state)
    return { tagState: due.length > 0 ? 'RUNNING IN' : 'STARTED', reasons: due }
  }
  if (state.cleared) return { tagState: 'READY TO START', reasons: [] }
  return { tagState: 'NOT READY TO START', reasons: ['not cleared for the first start'] }
}

/** What would do harm first, then what is many. */
function reasonsOf(state: State, leftovers: readonly Leftover[]): string[] {
  const sum = (...codes: Leftover['code'][]) =>
    leftovers
      .filter(({ code }) => codes.includes(code))
      .reduce((total, each) => total + ('count' in each ? each.count : 1), 0)
  const some = (count: number, text: string) => (count > 0 ? [text] : [])
  const off = sum('piece-off')
  const short = sum('piece-short')
  const lost = sum('piece-lost')
  const left = sum('piece-left-in')
  const old = sum('old-lying')
  const tight = sum('tighten-open')
  const eased = sum('eased-on')
  const marks = sum('mark-open')
  const faults = sum('fault-open')
  const counts = sum('count-open')
  const leftOut = sum('left-out-open')
  const steps = sum('step-open')
  return [
    ...some(off, `${counted(off, 'piece')} off`),
    ...drained(state, leftovers),
    ...byName(state, leftovers, 'aid-in', 'in it'),
    ...some(short, `${counted(short, 'piece')} missing`),
    ...some(lost, `${counted(lost, 'piece')} lost`),
    ...some(left, `${counted(left, 'piece')} too many on it`),
    ...some(faults, `${counted(faults, 'fault')} to be put right`),
    ...some(tight, `${counted(tight, 'tightening')} open`),
    ...some(eased, `${counted(eased, 'set')} of fasteners eased and still on`),
    ...some(marks, `${counted(marks, 'mark')} not confirmed`),
    ...some(counts, `${counted(counts, 'count')} not explained`),
    ...byName(state, leftovers, 'tool-out', 'not back'),
    ...some(old, `${counted(old, 'piece')} lying about that nothing waits for`),
    ...some(leftOut, `${counted(leftOut, 'entry', 'entries')} of a copy to be settled`),
    ...some(steps, `${counted(steps, 'step')} to do`),
  ]
}

function drained(state: State, leftovers: readonly Leftover[]): string[] {
  const names = leftovers.flatMap((each) =>
    each.code === 'fluid-open' ? (state.fluids.get(each.fluid)?.name ?? []) : [],
  )
  return [...new Set(names)].map((name) => `${name} drained`)
}

/** Aids and tools by their names: `2 rags in it`. */
function byName(
  state: State,
  leftovers: readonly Leftover[],
  code: 'aid-in' | 'tool-out',
  how: string,
): string[] {
  const counts = new Map<string, number>()
  for (const each of leftovers) {
    if (each.code !== code) continue
    const name = state.ledger.accounts.get(each.piece)?.piece.name ?? each.piece
    counts.set(name, (counts.get(name) ?? 0) + each.count)
  }
  return [...counts].map(([name, count]) => `${count} ${count === 1 ? singular(name) : name} ${how}`)
}

function checksDue(state: State): string[] {
  return [...state.steps.values()]
    .filter(
      ({ way, built, no }) =>
        way === 'after-start' && built !== 'done' && !state.overrides.has(`check ${no}`),
    )
    .map(({ no, title, due }) => `due: ${title}${due === undefined ? '' : `, ${due}`}, step ${no}`)
}
