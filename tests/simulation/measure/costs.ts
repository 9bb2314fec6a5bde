import type { Result } from '../../../src/cli/result.ts'
import type { Heed } from '../../../src/session/heeds.ts'
import type { Costs } from './tally.ts'

/** A line, and what came of it. */
export interface Said {
  line: string
  result: Result
}

/** Words of lines that only the tool asks for: the work itself does not need them. */
const CONFIRMING = /^(?:confirm|take|done|look|seen|ok|compare|clear|count) /

/** What stands under an answer, is asked, and holds up nothing. The rest of what stands there tells what comes next. */
const ASKING: ReadonlySet<Heed['heed']> = new Set(['joint', 'look-alikes', 'repeated', 'untightened'])

function questionsOf(result: Result): number {
  return result.ok ? (result.heeds ?? []).filter(({ heed }) => ASKING.has(heed)).length : 0
}

/** What a job took on the command line. */
export function costsOf(said: readonly Said[], entries: number): Costs {
  const count = (isOne: (each: Said) => boolean) => said.filter(isOne).length
  return {
    lines: said.length,
    entries,
    confirmations: count(({ line }) => CONFIRMING.test(`${line} `)),
    overrides: count(({ line }) => line.startsWith('override ')),
    scans: count(({ line }) => /^[\d ]{9,}$/.test(line)),
    refusals: count(({ result }) => !result.ok),
    questions: said.reduce((sum, { result }) => sum + questionsOf(result), 0),
  }
}
