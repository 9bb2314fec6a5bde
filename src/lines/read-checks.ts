import type { CheckKind } from '../plan/judging/judging-facts.ts'
import { readAskedMeasure } from '../trade/measuring/reading/read-asked-measure.ts'
import type { Line } from './line.ts'

export interface AskedCheck {
  kind: CheckKind
  what: string[]
}

const KINDS: readonly [CheckKind, RegExp][] = [
  ['look', /^look(?:ed)?(?: it)?(?: over)?(?: (?:for|at))?(?: |$)/i],
  ['measure', /^measured?(?: |$)/i],
  ['clean', /^clean(?:ed)?(?::? |$)/i],
  ['compare', /^compared?(?: with)?(?: |$)/i],
]

/**
 * What is asked of a piece: `look for score, cracks; measure run-out; clean`. A clause without a word of its own is what
 * to look for.
 */
export function readChecks(line: Line, text: string): AskedCheck[] {
  const clauses = text
    .split(/\s*;\s*/)
    .map((clause) => clause.trim())
    .filter((clause) => clause !== '')
  if (clauses.length === 0) line.missing('WHAT')
  const checks = clauses.map((clause) => readCheck(clause))
  for (const { what } of checks.filter(({ kind }) => kind === 'measure')) refuseBare(line, what)
  return checks
}

/** In a job in inches a limit without a unit may be either. */
function refuseBare(line: Line, asked: readonly string[]): void {
  const bare = asked.find((what) => readAskedMeasure(what).isBare)
  if (bare === undefined || line.state.job.units !== 'us') return
  line.notUnderstood(bare, line.whole.replace(bare, `${bare} in`))
}

/** Whether words begin a check of some kind. */
export function beginsCheck(text: string): boolean {
  return KINDS.some(([, begins]) => begins.test(text))
}

function readCheck(clause: string): AskedCheck {
  const [kind, begins] = KINDS.find(([, pattern]) => pattern.test(clause)) ?? ['look', /^/]
  const what = clause
    .replace(begins, '')
    // A decimal comma, and the figures of a limit, belong together.
    .split(/\s*,(?!\d)\s*|\s+and\s+(?!\d)/i)
    .map((each) => each.trim())
    .filter((each) => each !== '')
  return { kind, what }
}
